// Least squares through the origin (learning a response) and with an intercept.
#pragma once

#include <optional>
#include <span>

namespace hammerline {

/// y = slope x. slope = sum(x y)/sum(x^2); s^2 = SSres/(n - 1); standard error = s/sqrt(sum x^2). R^2 is uncentred,
/// 1 - SSres/sum(y^2). (NIST StRD NoInt1, NoInt2.)
struct OriginFit {
    double slope{};
    std::optional<double> standardError; // none with one point
    std::optional<double> residualDeviation;
    double sumOfSquares{}; // sum x^2
    int degreesOfFreedom{};
    double rSquared{};

    struct Interval {
        double centre{}, low{}, high{};
    };
    /// Two-sided interval of the slope at `level` (0.95) by Student's t. None with one point.
    std::optional<Interval> slopeInterval(double level = 0.95) const;
    /// Interval that holds one further y at x: slope x +- t s sqrt(1 + x^2/sum x^2). None with one point.
    std::optional<Interval> prediction(double x, double level = 0.95) const;
};
/// None: no points, different counts, or all x zero.
std::optional<OriginFit> fitThroughOrigin(std::span<const double> x, std::span<const double> y);

/// y = intercept + slope x by centred sums. (NIST StRD Norris.)
struct LineFit {
    double intercept{}, slope{};
    std::optional<double> interceptError, slopeError, residualDeviation; // none with two points
    double rSquared{};
    double at(double x) const { return intercept + slope * x; }
};
/// None: fewer than two points, different counts, or all x equal.
std::optional<LineFit> fitLine(std::span<const double> x, std::span<const double> y);

} // namespace hammerline
