#include "core/stats/regression.h"

#include "core/stats/distribution.h"
#include "core/stats/moments.h"

#include <cmath>

namespace hammerline {
namespace {

std::optional<double> halfWidth(const OriginFit& fit, double level, double spread) {
    if (fit.degreesOfFreedom < 1 || !(level > 0) || !(level < 1)) return std::nullopt;
    return studentQuantile(0.5 + level / 2, fit.degreesOfFreedom) * spread;
}

} // namespace

std::optional<OriginFit> fitThroughOrigin(std::span<const double> x, std::span<const double> y) {
    if (x.empty() || x.size() != y.size()) return std::nullopt;
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        xx += x[i] * x[i];
        xy += x[i] * y[i];
        yy += y[i] * y[i];
    }
    if (xx <= 0) return std::nullopt;
    OriginFit fit;
    fit.slope = xy / xx;
    fit.sumOfSquares = xx;
    fit.degreesOfFreedom = static_cast<int>(x.size()) - 1;
    double residual = 0; // from the residuals themselves: yy - slope xy loses digits on a good fit
    for (std::size_t i = 0; i < x.size(); ++i)
        residual += (y[i] - fit.slope * x[i]) * (y[i] - fit.slope * x[i]);
    fit.rSquared = yy > 0 ? 1 - residual / yy : 1;
    if (fit.degreesOfFreedom > 0) {
        fit.residualDeviation = std::sqrt(residual / fit.degreesOfFreedom);
        fit.standardError = *fit.residualDeviation / std::sqrt(xx);
    }
    return fit;
}

std::optional<OriginFit::Interval> OriginFit::slopeInterval(double level) const {
    const auto half = halfWidth(*this, level, standardError.value_or(0));
    return half ? std::optional(Interval{slope, slope - *half, slope + *half}) : std::nullopt;
}

std::optional<OriginFit::Interval> OriginFit::prediction(double x, double level) const {
    const double spread = residualDeviation.value_or(0) * std::sqrt(1 + x * x / sumOfSquares);
    const auto half = halfWidth(*this, level, spread);
    return half ? std::optional(Interval{slope * x, slope * x - *half, slope * x + *half}) : std::nullopt;
}

std::optional<LineFit> fitLine(std::span<const double> x, std::span<const double> y) {
    if (x.size() < 2 || x.size() != y.size()) return std::nullopt;
    const auto n = static_cast<double>(x.size());
    const double mx = *mean(x);
    const double my = *mean(y);
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        xx += (x[i] - mx) * (x[i] - mx);
        xy += (x[i] - mx) * (y[i] - my);
        yy += (y[i] - my) * (y[i] - my);
    }
    if (xx <= 0) return std::nullopt;
    LineFit fit;
    fit.slope = xy / xx;
    fit.intercept = my - fit.slope * mx;
    double residual = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double e = (y[i] - my) - fit.slope * (x[i] - mx);
        residual += e * e;
    }
    fit.rSquared = yy > 0 ? 1 - residual / yy : 1;
    if (x.size() > 2) {
        const double s = std::sqrt(residual / (n - 2));
        fit.residualDeviation = s;
        fit.slopeError = s / std::sqrt(xx);
        fit.interceptError = s * std::sqrt(1 / n + mx * mx / xx);
    }
    return fit;
}

} // namespace hammerline
