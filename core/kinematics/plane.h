// Points of a drawing plane and their turns. x toward the strings, y up, mm; angles in radians, counter-clockwise.
#pragma once

#include <cmath>

namespace hammerline::kinematics {

struct Point {
    double x = 0;
    double y = 0;
    friend Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
    friend Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
    friend bool operator==(const Point&, const Point&) = default;
};

inline double lengthOf(Point p) {
    return std::hypot(p.x, p.y);
}

inline double angleOf(Point p) {
    return std::atan2(p.y, p.x);
}

inline Point turned(Point p, double angle) {
    return {p.x * std::cos(angle) - p.y * std::sin(angle), p.x * std::sin(angle) + p.y * std::cos(angle)};
}

/// `p` turned about `centre`.
inline Point turnedAbout(Point centre, Point p, double angle) {
    return centre + turned(p - centre, angle);
}

} // namespace hammerline::kinematics
