// Statistics that one odd note does not move: median, MAD, quantiles, modified z-score.
#pragma once

#include <optional>
#include <span>
#include <vector>

namespace hammerline {

/// Median; the mean of the two middle values of an even count. None: no values.
std::optional<double> median(std::vector<double>);

/// Times the median of |x - median| it estimates the standard deviation of a Gaussian: 1 / the quartile 0.6745.
inline constexpr double kMadToDeviation = 1.4826;

/// Median of |x - median|, not scaled.
std::optional<double> medianAbsoluteDeviation(std::span<const double>);

/// Mean of |x - median|.
std::optional<double> meanAbsoluteDeviation(std::span<const double>);

/// How the order statistics are joined: Hyndman and Fan's types 6 (p (n + 1)) and 7 (1 + p (n - 1)).
enum class QuantileType { six = 6, seven = 7 };
/// None: no values, or p outside 0..1.
std::optional<double> quantile(std::vector<double>, double p, QuantileType = QuantileType::seven);

inline constexpr double kModifiedZCutOff = 3.5; // Iglewicz and Hoaglin 1993; NIST e-Handbook 1.3.5.17

/// Centre and scale of the modified z-score of Iglewicz and Hoaglin 1993.
struct RobustScale {
    double median{};
    double mad{};           // not scaled
    double meanDeviation{}; // used where mad is 0

    /// 0.6745 (x - median)/MAD; (x - median)/(1.253314 MeanAD) where MAD is 0; none where both are 0.
    std::optional<double> modifiedZ(double x) const;
};
std::optional<RobustScale> robustScale(std::span<const double>);

/// The modified z-score of each value; all none where the values have no spread.
std::vector<std::optional<double>> modifiedZ(std::span<const double>);

} // namespace hammerline
