#include "core/history/beside.h"

#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace hammerline {

namespace {

constexpr std::size_t kBesideEach = 6, kFewestInRow = 7;
constexpr double kMedianOverMean = std::numbers::pi / 2; // variance of a median over that of a mean
constexpr double kFloor = 0.5, kMayBeOdd = 2.5;
// Of a normal, the variance inside 2.5 standard deviations: 1 - 2 2.5 phi(2.5)/(2 Phi(2.5) - 1).
constexpr double kInsideOdd = 0.9113;

double medianBeside(std::span<const FirstReading> row, std::size_t i) {
    std::vector<double> beside;
    for (std::size_t j = i > kBesideEach ? i - kBesideEach : 0; j < std::min(row.size(), i + kBesideEach + 1); ++j)
        if (j != i) beside.push_back(row[j].value);
    return *median(std::move(beside));
}

struct Spread {
    double byMedian, whole; // variances
};

/// Variance of the residuals, twice: by their median, which no odd note moves, and by the squares of those that are
/// not odd, which sees what is heaped at a limit and straggles on one side. The whole is the larger, and by one part
/// in the root of their number more: too small a spread is the worse error.
Spread spreadOf(const std::vector<double>& off, double least) {
    const double byMedian = kMadToDeviation * robustScale(off)->mad;
    const double odd = kMayBeOdd * std::max(byMedian, least);
    double squares = 0, notOdd = 0;
    for (const double each : off)
        if (std::abs(each) <= odd) {
            squares += each * each;
            ++notOdd;
        }
    const double bySquares = notOdd > 0 ? squares / notOdd / kInsideOdd : 0;
    const double allowance = 1 + 1 / std::sqrt(static_cast<double>(off.size()));
    return {byMedian * byMedian * allowance, std::max(byMedian * byMedian, bySquares) * allowance};
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
    const Spread spread = spreadOf(off, u * std::sqrt(1 + kOfMedian));
    const auto between = [&](double total) { return std::max(total / (1 + kOfMedian) - u * u, kFloor * u * u); };
    const auto ofMiddle = [&](double total) { return kOfMedian * (between(total) + u * u); };
    // Whether a note may be the odd one is asked of the spread that odd notes do not widen: two heaps, some on their
    // rail and some off it, are no row around one middle.
    const double plain = between(spread.byMedian) + u * u + ofMiddle(spread.byMedian);
    const double mostOff = kMayBeOdd * std::sqrt(plain);
    const double known = between(spread.whole) + ofMiddle(spread.whole);
    for (std::size_t i = 0; i < row.size(); ++i)
        if (std::abs(off[i]) <= mostOff) out[i] = Beforehand{middle[i], known};
    return out;
}

} // namespace hammerline
