#include "core/judge/touch_diagnosis.h"

#include <cmath>

namespace hammerline {
namespace {

struct TouchZone {
    double low, aim, high;
};
constexpr TouchZone kFriction{6, 11, 16}, kOldFriction{6, 13, 20};
constexpr TouchZone kUprightWeight{34, 41, 48}, kGrandWeight{34, 38, 42};
constexpr double kLoose = 5; // g; below it a centre may be loose

/// From the aim, in the half width on that side.
double offAim(double value, const TouchZone& zone) {
    const double half = value < zone.aim ? zone.aim - zone.low : zone.high - zone.aim;
    return (value - zone.aim) / half;
}

} // namespace

std::string_view key(TouchSays says) {
    constexpr std::array<std::string_view, 6> kKeys = {"right", "friction", "weight", "light", "hidden", "loose"};
    return kKeys.at(static_cast<std::size_t>(says));
}

NoteTouch touchOf(NoteNumber note, double down, double up, TouchWeight touch, const Piano& piano, bool old) {
    NoteTouch out{note, down, up, touch, 0, 0, {}};
    out.frictionOff = offAim(touch.friction, old ? kOldFriction : kFriction);
    out.weightOff = offAim(touch.mean, piano.vertical() ? kUprightWeight : kGrandWeight);
    const bool rough = out.frictionOff > 1, heavy = out.weightOff > 1, light = out.weightOff < -1;
    if (rough && light)
        out.says = {TouchSays::hidden};
    else if (rough && heavy)
        out.says = out.frictionOff >= out.weightOff ? std::vector{TouchSays::friction, TouchSays::weight}
                                                    : std::vector{TouchSays::weight, TouchSays::friction};
    else if (rough)
        out.says = {TouchSays::friction};
    else if (heavy)
        out.says = {TouchSays::weight};
    else if (light)
        out.says = {TouchSays::light};
    if (touch.friction < kLoose) out.says.push_back(TouchSays::loose);
    if (out.says.empty()) out.says = {TouchSays::right};
    return out;
}

std::vector<NoteTouch> touchesOf(const Pass& pass, const Piano& piano, bool old) {
    std::vector<NoteTouch> out;
    for (int n = 1; n <= piano.notes; ++n) {
        const auto down = pass.value({NoteNumber{n}, dimension::downWeight});
        const auto up = pass.value({NoteNumber{n}, dimension::upWeight});
        if (!down || !up) continue;
        const double downG = toTrade(*down, row(dimension::downWeight).kind);
        const double upG = toTrade(*up, row(dimension::upWeight).kind);
        if (const auto touch = touchWeight(downG, upG))
            out.push_back(touchOf(NoteNumber{n}, downG, upG, *touch, piano, old));
    }
    return out;
}

} // namespace hammerline
