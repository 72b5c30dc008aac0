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

std::optional<StrokeBand> bandOf(const Zones& zones, NoteNumber note, DimensionId id) {
    const std::optional<Zone>& zone = zones.at({note, id});
    if (!zone) return std::nullopt;
    StrokeBand band{.low = {}, .high = {}, .aim = toTrade(zone->nominal, Kind::length)};
    if (zone->low) band.low = toTrade(*zone->low, Kind::length);
    if (zone->high) band.high = toTrade(*zone->high, Kind::length);
    return band;
}

/// from + by x, limits in order also where `by` is negative.
StrokeBand onKey(const StrokeBand& band, double from, double by) {
    const auto place = [&](const std::optional<double>& limit) -> std::optional<double> {
        if (!limit) return std::nullopt;
        return from + by * *limit;
    };
    const StrokeBand out{.low = place(band.low), .high = place(band.high), .aim = from + by * band.aim};
    if (by > 0) return out;
    return {.low = out.high, .high = out.low, .aim = out.aim};
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

Judged judgedDistance(Cell cell, double mm, const std::optional<Zone>& zone) {
    Measured measured;
    Reading reading;
    reading.count = fromTrade(mm, Kind::length);
    measured.trials = {reading};
    return judge(cell, measured, zone, 0, Rule::plain);
}

StrokeZones strokeZones(const Piano& piano, const Zones& zones, const Ratio& ratio, NoteNumber note) {
    StrokeZones out;
    out.bottom = bandOf(zones, note, dimension::keyDip);
    out.aftertouch = bandOf(zones, note, dimension::aftertouch);
    if (piano.vertical()) out.moves = bandOf(zones, note, dimension::lostMotion);
    const double moves = out.moves ? std::max(out.moves->aim, 0.0) : 0;
    const double perHammer = 1 / ratio.value;
    if (const auto damper = bandOf(zones, note, dimension::damperStart))
        out.damperStirs = onKey(*damper, moves, perHammer);
    const auto blow = bandOf(zones, note, dimension::blow);
    const auto letOff = bandOf(zones, note, dimension::letOff);
    if (blow && letOff) out.letOff = onKey(*letOff, moves + blow->aim * perHammer, -perHammer);
    return out;
}

} // namespace hammerline
