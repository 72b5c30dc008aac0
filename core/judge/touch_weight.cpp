#include "core/judge/touch_weight.h"

#include <cmath>

namespace hammerline {

Outcome<TouchWeight> touchWeight(double down, double up) {
    if (!(up < down)) return refuse(RefusalCode::upNotBelowDown);
    return TouchWeight{(down + up) / 2, (down - up) / 2};
}

double leadEffect(double grams, double distance, const KeyArms& arms) {
    return -grams * distance / arms.F();
}

TouchChange touchChange(const TouchWeight& before, const TouchWeight& now, double u) {
    TouchChange out{now.mean - before.mean, now.friction - before.friction, false, false};
    out.weightChanged = std::abs(out.mean) > 2 * u;
    out.frictionChanged = std::abs(out.friction) > 2 * u;
    return out;
}

} // namespace hammerline
