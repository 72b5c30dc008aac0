#include "core/stroke/stroke.h"

#include <algorithm>

namespace hammerline {

namespace {

/// Damper start is read at the hammer: how far that has come when the damper stirs.
std::optional<double> damperStirsAt(const PassTable& table, const Stroke& stroke, double ratio) {
    const auto read = table.value({stroke.note, dimension::damperStart});
    if (!read) return std::nullopt;
    if (!stroke.moves) return std::nullopt;
    return *stroke.moves + *read / ratio;
}

} // namespace

Stroke strokeOf(const Piano& piano, const PassTable& table, const Ratio& ratio, NoteNumber note) {
    Stroke stroke;
    stroke.note = note;
    const EscapementReading reading = escapementAt(piano, table, note);
    const bool letOffRead = reading.letOff && !reading.letOffBound && !reading.aftertouchBound;
    if (reading.lostMotion) stroke.moves = std::max(*reading.lostMotion, 0.0);
    stroke.bottom = reading.dip;
    stroke.damperStirs = damperStirsAt(table, stroke, ratio.value);
    if (stroke.moves && reading.blow && letOffRead)
        stroke.letOff = *stroke.moves + (*reading.blow - *reading.letOff) / ratio.value;
    if (stroke.letOff && stroke.bottom) stroke.aftertouch = *stroke.bottom - *stroke.letOff;
    if (!piano.vertical()) stroke.dropAtHammer = table.value({note, dimension::drop});
    return stroke;
}

} // namespace hammerline
