// Paints the shapes of a scene. A line is as thick at every scale; a wire is as thick as it is, and never thinner than
// a line.
#include "ui/widgets/doing/doing_drawing.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace hammerline::doing {

namespace {

constexpr double kOutline = 0.36, kThin = 0.22, kArrow = 0.8, kHead = 2.6; // units

/// Corners cut off by `round` and bent.
QPainterPath roundedPath(const Points& points, double round, bool open) {
    QPainterPath out;
    const std::size_t n = points.size();
    for (std::size_t i = 0; i < n; ++i) {
        const bool end = open && (i == 0 || i + 1 == n);
        const QPointF at = points[i], before = points[(i + n - 1) % n] - at, after = points[(i + 1) % n] - at;
        const double back = std::hypot(before.x(), before.y()), on = std::hypot(after.x(), after.y());
        const double cut = end ? 0 : std::min({round, back / 2, on / 2});
        const QPointF in = at + before * (back > 0 ? cut / back : 0), away = at + after * (on > 0 ? cut / on : 0);
        i == 0 ? out.moveTo(in) : out.lineTo(in);
        out.quadTo(at, away);
    }
    if (!open) out.closeSubpath();
    return out;
}

/// Through all points (Catmull and Rom).
QPainterPath smoothPath(const Points& points, bool open) {
    const int n = static_cast<int>(points.size());
    const auto at = [&](int i) {
        return points[static_cast<std::size_t>(open ? std::clamp(i, 0, n - 1) : (i + n) % n)];
    };
    QPainterPath out(at(0));
    for (int i = 0; i < (open ? n - 1 : n); ++i)
        out.cubicTo(at(i) + (at(i + 1) - at(i - 1)) / 6, at(i + 1) - (at(i + 2) - at(i)) / 6, at(i + 1));
    if (!open) out.closeSubpath();
    return out;
}

QBrush brushOf(const DrawnStyle& style, Fill fill) {
    switch (fill) {
    case Fill::wood:
        return ink(style.look.paper2);
    case Fill::felt:
        return ink(style.look.felt);
    case Fill::metal:
        return ink(style.look.ink2);
    case Fill::tool:
        return ink(style.look.line);
    case Fill::hand:
        return ink(style.look.paper);
    case Fill::paper:
        return ink(style.look.naturalTop);
    case Fill::dark:
        return ink(style.look.sharpTop);
    case Fill::none:
        break;
    }
    return Qt::NoBrush;
}

QPen penOf(const DrawnStyle& style, Line line) {
    QPen pen(ink(style.look.ink), style.u(kOutline), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    if (line == Line::hidden) pen.setStyle(Qt::NoPen);
    if (line == Line::ink || line == Line::hidden) return pen;
    pen.setColor(ink(style.look.ink2));
    pen.setWidthF(style.u(kThin));
    if (line == Line::dashed) pen.setDashPattern({5, 4});
    return pen;
}

void paintShape(QPainter& painter, const DrawnStyle& style, const Shape& shape, const QTransform& view) {
    const QPainterPath mm =
        shape.smooth ? smoothPath(shape.points, shape.open) : roundedPath(shape.points, shape.round, shape.open);
    const QPainterPath path = view.map(mm);
    if (shape.wire > 0) {
        const double thick = std::max(shape.wire * view.m11(), style.u(kOutline));
        painter.strokePath(path, QPen(ink(style.look.ink), thick, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        const double core = thick - 2 * style.u(kOutline);
        if (core > style.u(0.3))
            painter.strokePath(path, QPen(ink(style.look.line), core, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        return;
    }
    painter.setPen(penOf(style, shape.line));
    painter.setBrush(shape.open ? QBrush(Qt::NoBrush) : brushOf(style, shape.fill));
    painter.drawPath(path);
}

void paintArrow(QPainter& painter, const DrawnStyle& style, const Arrow& arrow, const QTransform& view) {
    const QPointF from = view.map(arrow.way.front()), tip = view.map(arrow.way.back());
    const QPointF bend = arrow.way.size() > 2 ? view.map(arrow.way[1]) : (from + tip) / 2;
    const QPointF last = tip - bend;
    const QPointF along = last / std::max(1.0, std::hypot(last.x(), last.y())), side(-along.y(), along.x());
    const double head = style.u(kHead);
    QPainterPath way(from);
    way.quadTo(bend, tip - along * head * 0.8);
    // a rim of paper keeps it clear of the lines it crosses
    painter.strokePath(way, QPen(ink(style.look.paper), style.u(kArrow) * 2.2, Qt::SolidLine, Qt::FlatCap));
    painter.strokePath(way, QPen(ink(style.look.ink), style.u(kArrow), Qt::SolidLine, Qt::FlatCap));
    painter.setPen(QPen(ink(style.look.paper), style.u(0.25)));
    painter.setBrush(ink(style.look.ink));
    painter.drawPolygon(QPolygonF(
        QList<QPointF>{tip, tip - along * head + side * head * 0.55, tip - along * head - side * head * 0.55}));
}

void paintScene(QPainter& painter, const DrawnStyle& style, const Scene& scene, const QTransform& view,
                const QRectF& place) {
    painter.save();
    painter.setClipRect(place);
    for (const Shape& each : scene.shapes)
        paintShape(painter, style, each, view);
    for (const Arrow& each : scene.arrows)
        paintArrow(painter, style, each, view);
    painter.restore();
}

const QFont& faceOf(const DrawnStyle& style, PlacedText::Face face) {
    return face == PlacedText::Face::strong ? style.bold : style.plain;
}

void paintText(QPainter& painter, const DrawnStyle& style, const PlacedText& text) {
    if (text.leads) {
        painter.setPen(QPen(ink(style.look.paper), style.u(kThin) * 3.5));
        painter.drawLine(text.from, text.to);
        painter.setPen(QPen(ink(style.look.ink2), style.u(kThin)));
        painter.drawLine(text.from, text.to);
        if (text.face != PlacedText::Face::strong) {
            painter.setBrush(ink(style.look.ink));
            painter.setPen(QPen(ink(style.look.paper), style.u(0.2)));
            painter.drawEllipse(text.to, style.u(0.55), style.u(0.55));
        }
    }
    const QFont& font = faceOf(style, text.face);
    painter.setPen(ink(text.face == PlacedText::Face::quiet ? style.look.ink2 : style.look.ink));
    const QFontMetricsF metrics(font);
    const double x = text.align & Qt::AlignRight     ? text.place.right()
                     : text.align & Qt::AlignHCenter ? text.place.center().x()
                                                     : text.place.left();
    double y = text.place.top() + metrics.ascent();
    for (const QString& line : text.lines) {
        drawnText(painter, style, font, {x, y}, line, text.align);
        y += metrics.height();
    }
}

} // namespace

void paintDrawing(QPainter& painter, const DrawnStyle& style, const Drawing& drawing, const Laid& laid) {
    painter.setRenderHint(QPainter::Antialiasing);
    paintScene(painter, style, drawing.act, laid.act, laid.actPlace);
    if (!laid.rule.isNull()) {
        painter.setPen(QPen(ink(style.look.line), style.u(0.25)));
        painter.drawLine(laid.rule);
    }
    if (laid.showsTest) paintScene(painter, style, drawing.test, laid.test, laid.testPlace);
    for (const PlacedText& each : laid.texts)
        paintText(painter, style, each);
}

} // namespace hammerline::doing
