// Colour as the eye has it, for the tests of the look: contrast (WCAG 2.2), CIE L*a*b* (D65), the difference CIEDE2000,
// and what a viewer without one kind of cone sees (Machado, Oliveira and Fernandes 2009).
#pragma once

#include <QColor>

#include <array>
#include <cmath>

namespace hammerline::colour {

using Three = std::array<double, 3>;
using Matrix = std::array<Three, 3>;

inline double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}
inline double encoded(double channel) {
    const double c = std::clamp(channel, 0.0, 1.0);
    return c <= 0.0031308 ? 12.92 * c : 1.055 * std::pow(c, 1 / 2.4) - 0.055;
}
inline Three linearOf(QRgb rgb) {
    return {linear(qRed(rgb) / 255.0), linear(qGreen(rgb) / 255.0), linear(qBlue(rgb) / 255.0)};
}

/// WCAG 2.2, relative luminance.
inline double luminance(QRgb rgb) {
    const Three c = linearOf(rgb);
    return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
}
/// WCAG 2.2, contrast ratio: 1 to 21.
inline double contrast(QRgb one, QRgb other) {
    const double a = luminance(one), b = luminance(other);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

/// As seen through a matrix on linear RGB.
inline QRgb seen(QRgb rgb, const Matrix& matrix) {
    const Three from = linearOf(rgb);
    std::array<int, 3> to{};
    for (std::size_t i = 0; i < 3; ++i)
        to.at(i) = qRound(255 * encoded(matrix[i][0] * from[0] + matrix[i][1] * from[1] + matrix[i][2] * from[2]));
    return qRgb(to[0], to[1], to[2]);
}

/// L*, a*, b* under D65.
inline Three lab(QRgb rgb) {
    const Three c = linearOf(rgb);
    const auto f = [](double t) {
        constexpr double d = 6.0 / 29.0;
        return t > d * d * d ? std::cbrt(t) : t / (3 * d * d) + 4.0 / 29.0;
    };
    const double x = f((0.4124564 * c[0] + 0.3575761 * c[1] + 0.1804375 * c[2]) / 0.95047);
    const double y = f(0.2126729 * c[0] + 0.7151522 * c[1] + 0.0721750 * c[2]);
    const double z = f((0.0193339 * c[0] + 0.1191920 * c[1] + 0.9503041 * c[2]) / 1.08883);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

/// CIEDE2000 (CIE 142-2001), all weights 1.
inline double difference(QRgb one, QRgb other) {
    constexpr double kDegree = M_PI / 180;
    const auto seventh = [](double c) { return std::sqrt(std::pow(c, 7) / (std::pow(c, 7) + std::pow(25.0, 7))); };
    Three p = lab(one), q = lab(other);
    const double g = 0.5 * (1 - seventh((std::hypot(p[1], p[2]) + std::hypot(q[1], q[2])) / 2));
    p[1] *= 1 + g;
    q[1] *= 1 + g;
    const double c1 = std::hypot(p[1], p[2]), c2 = std::hypot(q[1], q[2]);
    const auto hue = [](const Three& t) { return std::fmod(std::atan2(t[2], t[1]) / kDegree + 360, 360); };
    const double h1 = hue(p), h2 = hue(q);
    double turn = c1 * c2 == 0 ? 0 : h2 - h1;
    turn = turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn;
    const double dl = q[0] - p[0], dc = c2 - c1, dh = 2 * std::sqrt(c1 * c2) * std::sin(turn / 2 * kDegree);
    const double l = (p[0] + q[0]) / 2, c = (c1 + c2) / 2;
    const double sum = h1 + h2;
    const double h = c1 * c2 == 0 ? sum : std::abs(h1 - h2) <= 180 ? sum / 2 : (sum < 360 ? sum + 360 : sum - 360) / 2;
    const auto cosine = [](double degrees) { return std::cos(degrees * kDegree); };
    const double t =
        1 - 0.17 * cosine(h - 30) + 0.24 * cosine(2 * h) + 0.32 * cosine(3 * h + 6) - 0.2 * cosine(4 * h - 63);
    const double sl = 1 + 0.015 * std::pow(l - 50, 2) / std::sqrt(20 + std::pow(l - 50, 2));
    const double sc = 1 + 0.045 * c, sh = 1 + 0.015 * c * t;
    const double rt = -std::sin(60 * std::exp(-std::pow((h - 275) / 25, 2)) * kDegree) * 2 * seventh(c);
    return std::sqrt(std::pow(dl / sl, 2) + std::pow(dc / sc, 2) + std::pow(dh / sh, 2) + rt * dc / sc * dh / sh);
}

} // namespace hammerline::colour
