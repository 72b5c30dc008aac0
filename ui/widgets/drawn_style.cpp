#include "ui/widgets/drawn_style.h"

#include "ui/widgets/marks.h"

#include <QPainterPath>
#include <QWidget>

namespace hammerline {

DrawnStyle screenStyle(const QWidget& widget) {
    return {.look = lookOf(widget),
            .plain = face(Text::label),
            .bold = face(Text::digits, true),
            .strong = face(Text::listDigits, true),
            .unit = units(1)};
}

QColor zoneColour(const DrawnStyle& style) {
    return ink(style.look.zone);
}

double drawnWidth(const QFont& font, const QString& text) {
    return noteWidth(text, font);
}

void drawnText(QPainter& painter, const DrawnStyle&, const QFont& font, QPointF at, const QString& text,
               Qt::Alignment align) {
    painter.setFont(font);
    const double width = drawnWidth(font, text);
    double x = at.x();
    if (align & Qt::AlignRight) x -= width;
    if (align & Qt::AlignHCenter) x -= width / 2;
    paintNote(painter, {x, at.y()}, text);
}

void drawnHatch(QPainter& painter, const DrawnStyle& style, const QPainterPath& outline, const QColor& colour) {
    const QRectF box = outline.boundingRect();
    if (box.isEmpty()) return;
    painter.save();
    painter.setClipPath(outline, Qt::IntersectClip);
    painter.setPen(QPen(colour, style.u(0.25)));
    const double by = style.u(1.4);
    for (double x = box.left() - box.height(); x < box.right(); x += by)
        painter.drawLine(QPointF(x, box.bottom()), QPointF(x + box.height(), box.top()));
    painter.restore();
}

QPen inkPen(const DrawnStyle& style, double width) {
    return QPen(ink(style.look.ink), style.u(width), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
}

QPen dashedPen(const DrawnStyle& style, double width) {
    QPen pen = inkPen(style, width);
    pen.setDashPattern({4, 3});
    return pen;
}

} // namespace hammerline
