#include "core/stats/distribution.h"

#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

#include <cmath>
#include <limits>
#include <numbers>

namespace hammerline {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

} // namespace

double normalCdf(double z) {
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double normalQuantile(double p) {
    if (!(p > 0)) return -kInfinity;
    if (!(p < 1)) return kInfinity;
    return boost::math::quantile(boost::math::normal(), p);
}

double studentQuantile(double p, double degrees) {
    if (!(p > 0)) return -kInfinity;
    if (!(p < 1)) return kInfinity;
    return boost::math::quantile(boost::math::students_t(degrees), p);
}

double studentTwoSided(double t, double degrees) {
    if (!std::isfinite(t)) return 0;
    return 2 * boost::math::cdf(boost::math::complement(boost::math::students_t(degrees), std::abs(t)));
}

double fisherUpper(double f, double above, double below) {
    if (!std::isfinite(f)) return 0;
    if (!(f > 0)) return 1;
    return boost::math::cdf(boost::math::complement(boost::math::fisher_f(above, below), f));
}

} // namespace hammerline
