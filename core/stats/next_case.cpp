#include "core/stats/next_case.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace hammerline {
namespace {

constexpr std::size_t kGrid = 120;
constexpr double kReach = 3; // scales

struct AtTau {
    double logDensity{}, mean{}, variance{}; // variance: of the next case
};

AtTau atTau(std::span<const CaseEstimate> cases, double tau, double scale) {
    double weights = 0, sum = 0, logs = 0;
    for (const CaseEstimate& each : cases) {
        const double weight = 1 / (each.sd * each.sd + tau * tau);
        weights += weight;
        sum += weight * each.value;
        logs += std::log(weight);
    }
    AtTau out;
    out.mean = sum / weights;
    out.variance = tau * tau + 1 / weights;
    double squares = 0;
    for (const CaseEstimate& each : cases)
        squares += std::pow(each.value - out.mean, 2) / (each.sd * each.sd + tau * tau);
    out.logDensity = (logs - std::log(weights) - squares - std::pow(tau / scale, 2)) / 2;
    return out;
}

} // namespace

CaseEstimate nextCase(std::span<const CaseEstimate> cases, double scale) {
    if (cases.empty()) return {0, scale};
    std::array<AtTau, kGrid> grid;
    for (std::size_t i = 0; i < kGrid; ++i)
        grid.at(i) = atTau(cases, kReach * scale * (static_cast<double>(i) + 0.5) / kGrid, scale);
    const double top = std::ranges::max_element(grid, {}, &AtTau::logDensity)->logDensity;
    double all = 0, mean = 0, square = 0;
    for (const AtTau& each : grid) {
        const double share = std::exp(each.logDensity - top);
        all += share;
        mean += share * each.mean;
        square += share * (each.variance + each.mean * each.mean);
    }
    mean /= all;
    return {mean, std::sqrt(std::max(square / all - mean * mean, 0.0))};
}

} // namespace hammerline
