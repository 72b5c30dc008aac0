#include "core/stats/capability.h"

#include "core/stats/distribution.h"
#include "core/stats/moments.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

std::optional<Capability> capability(double mean, double s, double lower, double upper, double target) {
    if (!(s > 0) || !(lower < upper)) return std::nullopt;
    Capability out;
    out.cp = (upper - lower) / (6 * s);
    out.cpUpper = (upper - mean) / (3 * s);
    out.cpLower = (mean - lower) / (3 * s);
    out.cpk = std::min(out.cpUpper, out.cpLower);
    out.cpm = (upper - lower) / (6 * std::hypot(s, mean - target));
    return out;
}

std::optional<double> performanceIndex(std::span<const double> deviations) {
    const auto s = standardDeviation(deviations);
    if (!s || !(*s > 0)) return std::nullopt;
    const double m = *mean(deviations);
    return std::min(1 - m, 1 + m) / (3 * *s);
}

std::optional<PairedDifference> pairedDifference(std::span<const double> before, std::span<const double> after) {
    if (before.empty() || before.size() != after.size()) return std::nullopt;
    std::vector<double> change(before.size());
    for (std::size_t i = 0; i < before.size(); ++i)
        change[i] = after[i] - before[i];
    PairedDifference out;
    out.n = static_cast<int>(change.size());
    out.mean = *mean(change);
    out.deviation = standardDeviation(change);
    if (!out.deviation) return out;
    const double degrees = out.n - 1;
    const double error = *out.deviation / std::sqrt(static_cast<double>(out.n));
    const double quantile = studentQuantile(0.975, degrees);
    out.low95 = out.mean - quantile * error;
    out.high95 = out.mean + quantile * error;
    out.leastSignificantSingle = quantile * *out.deviation;
    if (error > 0) {
        out.t = out.mean / error;
        out.p = studentTwoSided(*out.t, degrees);
    }
    return out;
}

} // namespace hammerline
