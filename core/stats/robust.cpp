#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

std::vector<double> distancesFrom(double centre, std::span<const double> values) {
    std::vector<double> out;
    out.reserve(values.size());
    for (const double x : values)
        out.push_back(std::abs(x - centre));
    return out;
}

double plainMean(std::span<const double> values) {
    double sum = 0;
    for (const double x : values)
        sum += x;
    return sum / static_cast<double>(values.size());
}

} // namespace

std::optional<double> median(std::vector<double> values) {
    if (values.empty()) return std::nullopt;
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) return *middle;
    return (*std::max_element(values.begin(), middle) + *middle) / 2;
}

std::optional<double> medianAbsoluteDeviation(std::span<const double> values) {
    const auto centre = median({values.begin(), values.end()});
    return centre ? median(distancesFrom(*centre, values)) : std::nullopt;
}

std::optional<double> meanAbsoluteDeviation(std::span<const double> values) {
    const auto centre = median({values.begin(), values.end()});
    return centre ? std::optional(plainMean(distancesFrom(*centre, values))) : std::nullopt;
}

std::optional<double> quantile(std::vector<double> values, double p, QuantileType type) {
    if (values.empty() || !(p >= 0) || !(p <= 1)) return std::nullopt;
    std::sort(values.begin(), values.end());
    const auto n = static_cast<double>(values.size());
    const double place = type == QuantileType::six ? p * (n + 1) : 1 + p * (n - 1); // from 1
    const double held = std::clamp(place, 1.0, n);
    const auto below = static_cast<std::size_t>(held);
    const double share = held - static_cast<double>(below);
    const double low = values[below - 1];
    return share > 0 ? low + share * (values[below] - low) : low;
}

std::optional<double> RobustScale::modifiedZ(double x) const {
    if (mad > 0) return 0.6745 * (x - median) / mad;
    if (meanDeviation > 0) return (x - median) / (1.253314 * meanDeviation);
    return std::nullopt;
}

std::optional<RobustScale> robustScale(std::span<const double> values) {
    const auto centre = median({values.begin(), values.end()});
    if (!centre) return std::nullopt;
    const auto distances = distancesFrom(*centre, values);
    return RobustScale{*centre, *median(distances), plainMean(distances)};
}

std::vector<std::optional<double>> modifiedZ(std::span<const double> values) {
    std::vector<std::optional<double>> out(values.size());
    const auto scale = robustScale(values);
    for (std::size_t i = 0; scale && i < values.size(); ++i)
        out[i] = scale->modifiedZ(values[i]);
    return out;
}

} // namespace hammerline
