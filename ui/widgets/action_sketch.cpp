#include "ui/widgets/action_sketch.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

Sketch::Sketch(QPainter& painter, const QRectF& place, const QRectF& world, const Look& look)
    : m_painter(painter), m_look(look), m_textLeft(place.center().x()), m_textRight(m_textLeft) {
    m_scale = std::min(place.width() / world.width(), place.height() / world.height());
    const double left = place.center().x() - m_scale * world.width() / 2,
                 bottom = place.center().y() + m_scale * world.height() / 2;
    m_map = QTransform(m_scale, 0, 0, -m_scale, left - m_scale * world.left(), bottom + m_scale * world.top());
    m_painter.setRenderHint(QPainter::Antialiasing);
}

QTransform Sketch::turned(double degrees, QPointF about) {
    QTransform pose;
    pose.translate(about.x(), about.y());
    pose.rotate(degrees);
    pose.translate(-about.x(), -about.y());
    return pose;
}

QPen Sketch::outline(double width) const {
    return m_ghost ? QPen(ink(m_look.ink3), 1.2, Qt::DashLine)
                   : QPen(ink(m_look.ink2), width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
}

void Sketch::wood(const QPolygonF& shape, const QTransform& pose) {
    m_painter.setPen(outline());
    m_painter.setBrush(m_ghost ? QBrush(Qt::NoBrush) : QBrush(ink(m_look.paper2)));
    m_painter.drawPolygon((pose * m_map).map(shape));
}

void Sketch::felt(const QPainterPath& shape, const QTransform& pose) {
    m_painter.setPen(outline());
    m_painter.setBrush(m_ghost ? QBrush(Qt::NoBrush) : QBrush(ink(m_look.zone)));
    m_painter.drawPath((pose * m_map).map(shape));
}

void Sketch::felt(const QPolygonF& shape, const QTransform& pose) {
    QPainterPath path;
    path.addPolygon(shape);
    path.closeSubpath();
    felt(path, pose);
}

void Sketch::metal(const QPolygonF& line, double width, const QTransform& pose) {
    m_painter.setPen(
        m_ghost ? outline()
                : QPen(ink(m_look.ink2), std::max(1.3, width * m_scale), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    m_painter.setBrush(Qt::NoBrush);
    m_painter.drawPolyline((pose * m_map).map(line));
}

void Sketch::disc(QPointF centre, double radius, const QTransform& pose) {
    m_painter.setPen(outline());
    m_painter.setBrush(m_ghost ? QBrush(Qt::NoBrush) : QBrush(ink(m_look.paper)));
    m_painter.drawEllipse((pose * m_map).map(centre), radius * m_scale, radius * m_scale);
}

void Sketch::ground(double left, double right, double y) {
    m_painter.setPen(QPen(ink(m_look.edge), 1.3));
    m_painter.drawLine(at({left, y}), at({right, y}));
    m_painter.setPen(QPen(ink(m_look.line), 1));
    for (double x = left + 4; x <= right; x += 9)
        m_painter.drawLine(at({x, y}), at({x - 7, y - 7}));
}

void Sketch::string(QPointF from, QPointF to) {
    m_painter.setPen(QPen(ink(m_look.ink), 2));
    m_painter.drawLine(at(from), at(to));
}

void Sketch::keyTop(const QPolygonF& shape, bool sharp, const QTransform& pose) {
    m_painter.setPen(outline());
    m_painter.setBrush(m_ghost ? QBrush(Qt::NoBrush) : QBrush(ink(sharp ? m_look.sharpTop : m_look.naturalTop)));
    m_painter.drawPolygon((pose * m_map).map(shape));
}

void Sketch::wrote(double left, double width) {
    m_textLeft = std::min(m_textLeft, left);
    m_textRight = std::max(m_textRight, left + width);
}

void Sketch::label(QPointF where, const QString& text, bool right) {
    const QFont font = face(Text::tiny);
    m_painter.setFont(font);
    m_painter.setPen(ink(m_look.ink2));
    QPointF p = at(where);
    const double wide = QFontMetricsF(font).horizontalAdvance(text);
    if (right) p.rx() -= wide;
    wrote(p.x(), wide);
    m_painter.drawText(p, text);
}

void Sketch::reference(QPointF from, QPointF to) {
    m_painter.setPen(QPen(ink(m_look.ink3), 1.2, Qt::DashLine));
    m_painter.drawLine(at(from), at(to));
}

void Sketch::strong(const QPainterPath& path, double width) {
    m_painter.setBrush(Qt::NoBrush);
    m_painter.setPen(QPen(ink(m_look.ink), width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    m_painter.drawPath(m_map.map(path));
}

void Sketch::push(QPointF from, QPointF to) {
    const QPointF a = at(from), b = at(to);
    const double length = std::max(1.0, std::hypot((b - a).x(), (b - a).y()));
    const QPointF along = (b - a) / length, side(-along.y(), along.x());
    const double head = units(2.4);
    m_painter.setPen(QPen(ink(m_look.ink), 2.4, Qt::SolidLine, Qt::FlatCap));
    m_painter.drawLine(a, b - along * head);
    m_painter.setPen(Qt::NoPen);
    m_painter.setBrush(ink(m_look.ink));
    m_painter.drawPolygon(QPolygonF{{b, b - along * head + side * head * 0.5, b - along * head - side * head * 0.5}});
}

void Sketch::distance(QPointF from, QPointF to, const QString& name, QPointF nameOffset, bool right) {
    const QPointF a = at(from), b = at(to);
    const double length = std::max(1.0, std::hypot((b - a).x(), (b - a).y()));
    const QPointF along = (b - a) / length, side(-along.y(), along.x());
    const double head = std::min(units(2.2), length * 0.4), witness = units(3);
    const auto stroke = [&](QRgb colour, double extra) {
        m_painter.setPen(QPen(ink(colour), 2.4 + extra, Qt::SolidLine, Qt::FlatCap));
        m_painter.drawLine(a, b);
        m_painter.setPen(QPen(ink(colour), 1.4 + extra, Qt::SolidLine, Qt::FlatCap));
        for (const QPointF& end : {a, b})
            m_painter.drawLine(end - side * witness, end + side * witness);
    };
    stroke(m_look.paper, 4);
    stroke(m_look.ink, 0);
    m_painter.setPen(Qt::NoPen);
    m_painter.setBrush(ink(m_look.ink));
    for (const double way : {1.0, -1.0}) {
        const QPointF tip = way > 0 ? a : b, back = tip + along * head * way;
        m_painter.drawPolygon(QPolygonF{{tip, back + side * head * 0.42, back - side * head * 0.42}});
    }
    const QFont font = face(Text::body, true);
    m_painter.setFont(font);
    const double wide = QFontMetricsF(font).horizontalAdvance(name);
    QPointF p = (a + b) / 2 + QPointF(nameOffset.x() * m_scale, -nameOffset.y() * m_scale);
    if (right) p.rx() -= wide;
    wrote(p.x(), wide);
    p.ry() += QFontMetricsF(font).capHeight() / 2;
    m_painter.setPen(Qt::NoPen);
    m_painter.setBrush(ink(m_look.paper));
    m_painter.drawRoundedRect(
        QRectF(p.x() - 3, p.y() - QFontMetricsF(font).capHeight() - 4, wide + 6, QFontMetricsF(font).capHeight() + 9),
        3, 3);
    m_painter.setPen(ink(m_look.ink));
    m_painter.drawText(p, name);
}

} // namespace hammerline
