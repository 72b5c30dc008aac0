#include "ui/widgets/doing/pieces.h"

#include <cmath>
#include <numbers>

namespace hammerline::doing {

Points box(double left, double bottom, double right, double top) {
    return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

Points oval(QPointF centre, double across, double high) {
    constexpr int kPoints = 16;
    Points out;
    for (int i = 0; i < kPoints; ++i) {
        const double a = 2 * std::numbers::pi * i / kPoints;
        out.push_back(centre + QPointF(across / 2 * std::cos(a), high / 2 * std::sin(a)));
    }
    return out;
}

Shape part(Fill fill, Points points, double round) {
    return {.fill = fill, .points = std::move(points), .round = round};
}

Shape curve(Fill fill, Points points) {
    return {.fill = fill, .points = std::move(points), .smooth = true};
}

Shape wire(Points points, double thick, bool smooth) {
    return {.fill = Fill::metal, .points = std::move(points), .smooth = smooth, .open = true, .wire = thick};
}

Shape thinLine(Points points, bool smooth) {
    return {.fill = Fill::none, .points = std::move(points), .smooth = smooth, .open = true, .line = Line::thin};
}

Shape dashed(Points points, bool closed) {
    return {.fill = Fill::none, .points = std::move(points), .open = !closed, .line = Line::dashed};
}

QTransform put(QPointF at, double degrees, double scale, bool mirrored) {
    QTransform out;
    out.translate(at.x(), at.y());
    out.rotate(degrees);
    out.scale(mirrored ? -scale : scale, scale);
    return out;
}

Shapes moved(Shapes shapes, const QTransform& to) {
    const double scale = std::sqrt(std::abs(to.determinant()));
    for (Shape& each : shapes) {
        each.round *= scale;
        each.wire *= scale;
        for (QPointF& point : each.points)
            point = to.map(point);
    }
    return shapes;
}

Shapes together(std::initializer_list<Shapes> lists) {
    Shapes out;
    for (const Shapes& each : lists)
        out.insert(out.end(), each.begin(), each.end());
    return out;
}

} // namespace hammerline::doing
