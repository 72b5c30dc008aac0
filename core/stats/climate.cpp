#include "core/stats/climate.h"

namespace hammerline {

std::optional<double> equilibriumMoisture(double celsius, double humidity) {
    if (!(humidity >= 0) || !(humidity <= 100) || !(celsius >= -30) || !(celsius <= 100)) return std::nullopt;
    const double t = celsius;
    const double w = 349 + 1.29 * t + 0.0135 * t * t;
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * humidity / 100;
    const double hydrates = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
    return 1800 / w * (kh / (1 - kh) + hydrates);
}

} // namespace hammerline
