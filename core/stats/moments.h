// Mean, variance and lag-one correlation, by the corrected two-pass formulas.
#pragma once

#include <optional>
#include <span>
#include <vector>

namespace hammerline {

/// Arithmetic mean. Summed about the first value, so that a large common offset costs no digits. None: no values.
std::optional<double> mean(std::span<const double>);

/// Sample variance, divisor n - 1: [sum d^2 - (sum d)^2 / n] / (n - 1) with d = x - mean (the second term takes back
/// the rounding of the mean). None with fewer than two values. A one-pass sum of squares loses every digit on the sets
/// NumAcc3 and NumAcc4 of the NIST reference data.
std::optional<double> variance(std::span<const double>);

std::optional<double> standardDeviation(std::span<const double>);

/// r1 = sum (x[i] - m)(x[i-1] - m) / sum (x[i] - m)^2. None with fewer than two values or no spread.
std::optional<double> lagOneCorrelation(std::span<const double>);

/// Pooled standard deviation of repeats: sqrt(sum (n_i - 1) s_i^2 / sum (n_i - 1)), with its degrees of freedom.
struct PooledDeviation {
    double value{};
    int degreesOfFreedom{};
};
/// None where no group holds two values.
std::optional<PooledDeviation> pooledDeviation(std::span<const std::vector<double>> groups);

} // namespace hammerline
