// Conformity with a tolerance when the reading itself is uncertain (JCGM 106:2012; ISO 14253-1:2017).
#pragma once

#include <optional>

namespace hammerline {

struct ToleranceLimits {
    std::optional<double> low, high; // an absent limit is open
};

/// Probability that the true value lies within the limits for a Gaussian reading x with standard uncertainty u:
/// Phi((high - x)/u) - Phi((low - x)/u) (JCGM 106:2012, clause 7). u = 0: 1 or 0, the limits belonging to the inside.
double probabilityOfConformity(double x, double u, const ToleranceLimits&);

enum class Conformity { proven, neither, disproven };

/// Decision with a guard band w at each limit: proven inside the limits shrunk by w, disproven beyond the limits
/// widened by w, neither between (ISO 14253-1:2017: w = 1.65 u for 95 %; w = U = 2 u by choice). Both borders belong to
/// the better side: a reading exactly at limit - w is proven, one exactly at limit + w is not yet disproven.
Conformity decide(double x, double w, const ToleranceLimits&);

inline constexpr double kGuardFactor95 = 1.65; // of u, ISO 14253-1:2017 (exact: 1.644854)
inline constexpr double kGuardFactorU = 2.0;   // of u, expanded uncertainty with k = 2

} // namespace hammerline
