#include "ui/widgets/drawn_style.h"

#include "ui/widgets/marks.h"

#include <QPainterPath>
#include <QWidget>

#include <algorithm>

namespace hammerline {

namespace {
constexpr double kDashOn = 4, kDashOff = 3; // widths of the pen
} // namespace

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

namespace {

/// Where the line x + y = sum enters and leaves the outline, by x, in order.
std::vector<double> crossings(const QPolygonF& outline, double sum) {
    std::vector<double> out;
    for (qsizetype i = 0; i < outline.size(); ++i) {
        const QPointF from = outline[i], to = outline[(i + 1) % outline.size()];
        const double a = from.x() + from.y() - sum, b = to.x() + to.y() - sum;
        if ((a > 0) == (b > 0)) continue;
        out.push_back(from.x() + (to.x() - from.x()) * a / (a - b));
    }
    std::ranges::sort(out);
    return out;
}

} // namespace

/// The lines are cut at the outline by reckoning: a clip by a path costs a frame more than all its lines.
void drawnHatch(QPainter& painter, const DrawnStyle& style, const QPainterPath& outline, const QColor& colour) {
    const QPolygonF edge = outline.toFillPolygon();
    const QRectF box = edge.boundingRect();
    if (box.isEmpty()) return;
    const double by = style.u(2);
    QList<QLineF> lines;
    for (double sum = box.left() + box.top() + by / 2; sum < box.right() + box.bottom(); sum += by) {
        const auto at = crossings(edge, sum);
        for (std::size_t i = 0; i + 1 < at.size(); i += 2)
            lines << QLineF(at[i], sum - at[i], at[i + 1], sum - at[i + 1]);
    }
    painter.setPen(QPen(colour, style.u(0.25)));
    painter.drawLines(lines);
}

/// A dashed pen makes one shape of all its dashes, which takes the painter several times as long as their lines.
void drawnBroken(QPainter& painter, const DrawnStyle& style, const QPainterPath& outline, double width) {
    const double dash = kDashOn * style.u(width), gap = kDashOff * style.u(width);
    QList<QLineF> lines;
    for (const QPolygonF& side : outline.toSubpathPolygons()) {
        double along = 0; // since the last dash began
        for (qsizetype i = 0; i + 1 < side.size(); ++i) {
            const QLineF whole(side[i], side[i + 1]);
            const double length = whole.length();
            for (double at = -along; at < length; at += dash + gap) {
                const double from = std::max(at, 0.0), to = std::min(at + dash, length);
                if (to > from) lines << QLineF(whole.pointAt(from / length), whole.pointAt(to / length));
                along = length - at;
            }
        }
    }
    painter.setPen(inkPen(style, width));
    painter.drawLines(lines);
}

QPen inkPen(const DrawnStyle& style, double width) {
    return QPen(ink(style.look.ink), style.u(width), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
}

QPen dashedPen(const DrawnStyle& style, double width) {
    QPen pen = inkPen(style, width);
    pen.setDashPattern({kDashOn, kDashOff});
    return pen;
}

} // namespace hammerline
