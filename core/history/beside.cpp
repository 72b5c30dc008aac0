#include "core/history/beside.h"

#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace hammerline {

namespace {

constexpr std::size_t kBesideEach = 6, kFewestInRow = 7;
constexpr double kMedianOverMean = std::numbers::pi / 2; // variance of a median over that of a mean
constexpr double kTooSmallBy = 1.25, kFloorShare = 0.5, kMayBeOdd = 2.5;

double medianBeside(std::span<const FirstReading> row, std::size_t i) {
    std::vector<double> beside;
    for (std::size_t j = i > kBesideEach ? i - kBesideEach : 0; j < std::min(row.size(), i + kBesideEach + 1); ++j)
        if (j != i) beside.push_back(row[j].value);
    return *median(std::move(beside));
}

} // namespace

std::vector<std::optional<Beforehand>> besideEach(std::span<const FirstReading> row, double u) {
    std::vector<std::optional<Beforehand>> out(row.size());
    if (row.size() < kFewestInRow) return out;
    std::vector<double> middle, off;
    for (std::size_t i = 0; i < row.size(); ++i) {
        middle.push_back(medianBeside(row, i));
        off.push_back(row[i].value - middle.back());
    }
    constexpr double kOfMedian = kMedianOverMean / (2.0 * kBesideEach);
    const double seen = kMadToDeviation * robustScale(off)->mad;
    const double total = seen * seen / (1 + kOfMedian);
    const double between = std::max(kTooSmallBy * (total - u * u), kFloorShare * kFloorShare * u * u);
    const double ofMiddle = kOfMedian * (between + u * u);
    const double mostOff = kMayBeOdd * std::sqrt(between + u * u + ofMiddle);
    for (std::size_t i = 0; i < row.size(); ++i)
        if (std::abs(off[i]) <= mostOff) out[i] = Beforehand{middle[i], between + ofMiddle};
    return out;
}

} // namespace hammerline
