#include "core/pass/height_datum.h"

#include <algorithm>
#include <cstdlib>

namespace hammerline {
namespace {

constexpr std::int64_t kLineWithin = 8 * kNmPerMm;
constexpr std::int64_t kBedLow = 40 * kNmPerMm, kBedHigh = 100 * kNmPerMm;

} // namespace

std::string_view datumOf(std::int64_t height) {
    if (std::abs(height) <= kLineWithin) return "line";
    if (height < kLineWithin || height > kBedHigh) return {};
    return height < kBedLow ? "slip" : "bed";
}

bool isOverAnotherDatum(Cell cell, const Reading& reading, std::string_view datum) {
    return cell.dimension == dimension::keyHeight && !reading.word && datumOf(reading.count) != datum;
}

bool hasHeights(const Pass& pass) {
    return std::any_of(pass.cells.begin(), pass.cells.end(), [&](const auto& each) {
        return each.first.dimension == dimension::keyHeight && pass.value(each.first);
    });
}

} // namespace hammerline
