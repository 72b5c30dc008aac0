// What the drawing of an action says: names of its parts, the five moments, and why it cannot be drawn.
#pragma once

#include "core/stroke/drawn_note.h"

#include <QString>

namespace hammerline {

/// Parts that a drawing names.
enum class PartName : std::uint8_t {
    none,
    key,
    wippen,
    jack,
    hammer,
    backCheck,
    damper,
    letOffButton,
    capstan,
    restRail,
    string,
    repetitionLever,
};

} // namespace hammerline

namespace hammerline::words {

QString partOfDrawing(PartName);
/// "Dip 6.0, blow 46.0, let-off 3.0 and lost motion 0.2 cannot be drawn together: ..."
QString notDrawnSentence(const NotDrawn&, const PassTable&, NoteNumber, const Piano&);
/// "Drawn at its aim, for want of a reading: checking, damper lift timing"; empty where all was read.
QString atAimSentence(const DrawnNote&);

} // namespace hammerline::words
