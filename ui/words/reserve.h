// How much is left and what settles, in sentences: the note card, the terminal and the owner's record say the same.
#pragma once

#include "core/reserve/reserve.h"
#include "core/reserve/settling.h"

#include <QString>
#include <QStringList>

namespace hammerline::words {

/// "Capstan thread"
QString reserveName(ReserveOf);
/// "Capstan thread: at least 3 more rounds (6.0 mm, 2.0 a round)", or why it is not known.
QString reserveSentence(const Reserve&);
/// The same over a whole piano: names the note with the least.
QString leastReserveSentence(const LeastReserve&, const Piano&);

/// "Balance punchings, new at 1-88, settles. Expected, in mm: key height −0.13 to −1.59, ... Read from 2026-04-12;
/// settled about 2026-09-01."
QString settlingSentence(const Settling&, const Piano&);
/// "Share of the thickness: common practice, no source": where the band is from.
QString settlingSource(const Settling&);

} // namespace hammerline::words
