// The account of the dip and the stroke in sentences: the terminal prints them, a screen reader says them, and the
// pictures take their labels from here, so that all three show the same digits.
#pragma once

#include "core/sheet/note_action.h"

#include <QString>
#include <QStringList>

namespace hammerline::words {

/// A way of the key, and a share of the account: two decimals. The aftertouch read at the note has the decimals of its
/// dimension.
QString keyTravel(double mm);
/// With its sign: "+1.04", a real minus.
QString shareText(double mm);
/// What the line gives or takes and how it comes about: "+5.1 ÷ 4.90 = +1.04"; "not read" where it was not.
QString shareWords(const DipTerm&, const Ratio&);
/// What the line is: "the whole way of the key".
QString termMeaning(DimensionId);
QString ratioSentence(const Ratio&);
/// "0.55 reckoned, 0.5 read: they agree"; what is missing where nothing can be reckoned.
QString aftertouchSentence(const DipAccount&);
/// What the line that was not read must have been, with its interval of 95 %; empty where it is not known.
QString inferredSentence(const DipAccount&);
/// "0.65 less than the aims would leave: the shallow dip took 0.70, ..."; empty where nothing counts.
QString againstSentence(const DipAccount&);
/// The whole account as lines of plain text.
QStringList accountLines(const NoteAction&);

enum class StrokeEvent : std::uint8_t { moves, damperStirs, letOff, bottom };
QString strokeEventName(StrokeEvent);
/// What was read has the decimals of its dimension, what is reckoned two; a damper, which no eye sees so well, one.
QString strokePlace(StrokeEvent, double mm);
/// "let-off at 8.95"
QString strokeEventText(StrokeEvent, double mm);
/// "Note 33, F3: hammer moves at 0.6; damper stirs at 5.1; let-off at 8.95; bottom at 9.5; 0.55 left."
QString strokeSentence(const Stroke&, const Piano&);

} // namespace hammerline::words
