// Capability indices and paired comparison.
#pragma once

#include <optional>
#include <span>

namespace hammerline {

/// Cp = (USL - LSL)/(6 s); Cpk = min(USL - m, m - LSL)/(3 s); Cpm with a target T = (USL - LSL)/(6 sqrt(s^2 + (m -
/// T)^2)) (NIST/SEMATECH e-Handbook 6.1.6).
struct Capability {
    double cp{}, cpUpper{}, cpLower{}, cpk{}, cpm{};
};
/// None where s is not positive or the limits are not in order.
std::optional<Capability> capability(double mean, double s, double lower, double upper, double target);

/// Ppk on the deviation scale, where low limit, aim and high limit are -1, 0 and 1 whatever the zone:
/// min(1 - m, 1 + m)/(3 s) with m, s mean and standard deviation of the deviations (computation 11). None with fewer
/// than two values or no spread.
std::optional<double> performanceIndex(std::span<const double> deviations);

/// Student's paired comparison of after - before.
struct PairedDifference {
    int n{};
    double mean{};
    std::optional<double> deviation, t, p, low95, high95; // none with one pair; t and p none without spread
    std::optional<double> leastSignificantSingle;         // t(.975, n-1) sd: of one pair
};
/// None: no pairs or different counts.
std::optional<PairedDifference> pairedDifference(std::span<const double> before, std::span<const double> after);

} // namespace hammerline
