#include "core/stats/conformity.h"

#include "core/stats/distribution.h"

#include <algorithm>

namespace hammerline {

double probabilityOfConformity(double x, double u, const ToleranceLimits& limits) {
    if (!(u > 0)) return (!limits.low || x >= *limits.low) && (!limits.high || x <= *limits.high) ? 1.0 : 0.0;
    if (!limits.low && !limits.high) return 1.0;
    if (!limits.low) return normalCdf((*limits.high - x) / u);
    if (!limits.high) return normalCdf((x - *limits.low) / u);
    // Far beyond one limit the two Phi are nearly 1 and their difference has no digits left: take the smaller tails.
    const double low = (*limits.low - x) / u;
    const double high = (*limits.high - x) / u;
    const double p = low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);
    return std::clamp(p, 0.0, 1.0);
}

Conformity decide(double x, double w, const ToleranceLimits& limits) {
    const bool proven = (!limits.low || x >= *limits.low + w) && (!limits.high || x <= *limits.high - w);
    if (proven) return Conformity::proven;
    const bool disproven = (limits.low && x < *limits.low - w) || (limits.high && x > *limits.high + w);
    return disproven ? Conformity::disproven : Conformity::neither;
}

} // namespace hammerline
