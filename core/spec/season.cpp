#include "core/spec/season.h"

#include <algorithm>

namespace hammerline {
namespace {

double shareOfSwing(double swing) {
    return swing < 20 ? 0.1 : swing <= 40 ? 0.2 : 0.3;
}

void moveAim(Zone& zone, double by) {
    constexpr double kLeastAim = 0.05, kLeastAimOverALimit = 0.1, kFromTheTop = 0.1; // mm
    const bool limited = zone.low && *zone.low > 0;
    const double least = limited ? kLeastAimOverALimit : kLeastAim;
    const double most = zone.high ? toTrade(*zone.high, Kind::length) - kFromTheTop : 1e9;
    const double aim = toTrade(zone.nominal, Kind::length) + by;
    zone.nominal = fromMm(std::clamp(aim, std::min(least, most), std::max(least, most))).nm;
}

} // namespace

SpecSheet withSeasonsAim(SpecSheet sheet, std::optional<YearOfHumidity> year, std::optional<double> now) {
    if (!year || !now) return sheet;
    const double swing = year->high - year->low;
    const double place = std::clamp((*now - year->low) / swing, 0.0, 1.0);
    const double by = (0.5 - place) * shareOfSwing(swing);
    for (ZoneRow& row : sheet.zones) {
        if (row.dimension != dimension::lostMotion) continue;
        moveAim(row.first, by);
        moveAim(row.last, by);
    }
    return sheet;
}

} // namespace hammerline
