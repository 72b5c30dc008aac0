#include "core/plan/after_plan.h"

namespace hammerline {

Pass passSupposing(const Pass& pass, std::span<const Supposed> supposed) {
    Pass out = pass;
    for (const Supposed& each : supposed) {
        Measured& measured = out.cells[each.cell];
        Reading reading;
        reading.count = fromTrade(each.value, row(each.cell.dimension).kind);
        measured.trials = {reading};
        measured.notFitted = false;
    }
    return out;
}

std::vector<Supposed> raisedFront(const Piano& piano, const Pass& pass, NoteNumber note, double mm, double ratio) {
    const KeyLever lever = keyLever(piano.armsOf(colourOf(note, piano)));
    const double punching = mm / lever.heightPerBalance;
    std::vector<Supposed> out;
    const auto read = [&](DimensionId id) -> std::optional<double> {
        const auto count = pass.value({note, id});
        return count ? std::optional(toTrade(*count, Kind::length)) : std::nullopt;
    };
    if (const auto dip = read(dimension::keyDip))
        out.push_back({{note, dimension::keyDip}, *dip + punching * lever.dipPerBalance});
    const double lessWay = punching * lever.lostPerBalance; // of the key before the hammer stirs
    const auto lost = piano.vertical() ? read(dimension::lostMotion) : std::optional(0.0);
    if (!lost) return out;
    const double left = *lost - lessWay;
    const double beyond = piano.vertical() ? std::min(left, 0.0) : left;
    if (piano.vertical()) out.push_back({{note, dimension::lostMotion}, std::max(left, 0.0)});
    const auto blow = read(dimension::blow);
    if (blow && beyond != 0) out.push_back({{note, dimension::blow}, *blow + ratio * beyond});
    return out;
}

Pass passAfter(const Pass& pass, const Plan& plan) {
    std::vector<Supposed> expected;
    expected.reserve(plan.expected.size());
    for (const Expected& each : plan.expected)
        expected.push_back({each.cell, each.value});
    return passSupposing(pass, expected);
}

} // namespace hammerline
