#include "ui/widgets/stroke_painter.h"

#include "ui/widgets/stroke_labels.h"
#include "ui/words/stroke_labels.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kNames = 25.5, kRead = 10.5, kAfter = 5.5, kBetween = 4.5, kOverBars = 3, kUnderBars = 2,
                 kTicks = 5; // units

void shade(QPainter& painter, const DrawnStyle& style, const KeyWay& way, const QRectF& box,
           const std::optional<StrokeBand>& band) {
    if (!band) return;
    const double low = way.x(std::clamp(band->low.value_or(0), 0.0, way.most));
    const double high = way.x(std::clamp(band->high.value_or(way.most), 0.0, way.most));
    painter.fillRect(QRectF(low, box.top(), high - low, box.height()), zoneColour(style));
    QPen aim(ink(style.look.edge), style.u(0.3));
    aim.setDashPattern({3, 3});
    painter.setPen(aim);
    const double at = way.x(std::clamp(band->aim, 0.0, way.most));
    painter.drawLine(QPointF(at, box.top()), QPointF(at, box.bottom()));
}

void paintTicks(QPainter& painter, const DrawnStyle& style, const KeyWay& way, const QRectF& box) {
    for (int mm = 0; mm <= way.most; ++mm) {
        const double x = way.x(mm);
        painter.setPen(QPen(ink(style.look.line), style.u(0.25)));
        painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()));
        painter.setPen(ink(style.look.ink2));
        drawnText(painter, style, style.plain, {x, box.bottom() + style.u(4)}, QString::number(mm), Qt::AlignHCenter);
    }
}

/// The way left after the jack: filled by its verdict; a jack that does not escape leaves a gap in a broken outline.
void paintLeft(QPainter& painter, const DrawnStyle& style, const KeyWay& way, const QRectF& bar,
               const NoteAction& action) {
    const Stroke& stroke = action.stroke;
    if (!stroke.letOff || !stroke.bottom) return;
    const double from = way.x(std::min(*stroke.letOff, *stroke.bottom));
    const double to = way.x(std::max(*stroke.letOff, *stroke.bottom));
    const QRectF box(from, bar.top(), to - from, bar.height());
    const auto left = judgedLeft(action.account);
    const bool high = left && left->verdict == Verdict::high;
    const RampStop& stop = style.look.stop(left ? left->marks() : 0, high);
    if (stroke.jackEscapes()) {
        painter.fillRect(box, ink(stop.fill));
        painter.setPen(inkPen(style));
        painter.drawRect(box);
        return;
    }
    QPainterPath outline;
    outline.addRect(box);
    drawnHatch(painter, style, outline, ink(style.look.fault));
    painter.setPen(dashedPen(style));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box);
}

void paintDamper(QPainter& painter, const DrawnStyle& style, double x, double bottom, bool filled) {
    const double half = style.u(1.8);
    painter.setPen(inkPen(style));
    painter.setBrush(filled ? ink(style.look.ink) : ink(style.look.paper));
    painter.drawPolygon(QPolygonF{
        {QPointF(x - half, bottom - style.u(2.6)), QPointF(x + half, bottom - style.u(2.6)), QPointF(x, bottom)}});
    painter.setBrush(Qt::NoBrush);
}

void paintRead(QPainter& painter, const DrawnStyle& style, const KeyWay& way, const QRectF& bar,
               const NoteAction& action) {
    const Stroke& stroke = action.stroke;
    const double reaches = stroke.bottom.value_or(stroke.letOff.value_or(way.most));
    const QRectF whole(way.x(0), bar.top(), way.x(reaches) - way.x(0), bar.height());
    painter.fillRect(whole, ink(style.look.paper));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(stroke.bottom ? inkPen(style) : dashedPen(style));
    painter.drawRect(whole);
    paintLeft(painter, style, way, bar, action);
    if (stroke.moves && *stroke.moves > 0) {
        QPainterPath lost;
        lost.addRect(QRectF(way.x(0), bar.top(), way.x(*stroke.moves) - way.x(0), bar.height()));
        drawnHatch(painter, style, lost, ink(style.look.ink2));
        painter.setPen(inkPen(style));
        painter.drawPath(lost);
    }
    const auto stroked = [&](double mm, double wide, double over) {
        painter.fillRect(QRectF(way.x(mm) - style.u(wide) / 2, bar.top() - style.u(over), style.u(wide),
                                bar.height() + style.u(2 * over)),
                         ink(style.look.ink));
    };
    if (stroke.letOff) stroked(*stroke.letOff, 0.7, 1.2);
    if (stroke.bottom) stroked(*stroke.bottom, 1.25, 1);
    if (stroke.damperStirs) paintDamper(painter, style, way.x(*stroke.damperStirs), bar.bottom(), true);
}

void paintAfter(QPainter& painter, const DrawnStyle& style, const KeyWay& way, const QRectF& bar,
                const Stroke& stroke) {
    if (!stroke.bottom) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(dashedPen(style));
    painter.drawRect(QRectF(way.x(0), bar.top(), way.x(*stroke.bottom) - way.x(0), bar.height()));
    for (const auto& at : {stroke.moves, stroke.letOff})
        if (at) painter.drawLine(QPointF(way.x(*at), bar.top()), QPointF(way.x(*at), bar.bottom()));
    if (stroke.damperStirs) paintDamper(painter, style, way.x(*stroke.damperStirs), bar.bottom(), false);
}

} // namespace

KeyWay KeyWay::over(double left, double right, const NoteAction& action) {
    double most = 10.7;
    for (const auto& at : {action.stroke.bottom, action.stroke.letOff})
        most = std::max(most, at.value_or(0));
    if (action.strokeAfter) most = std::max(most, action.strokeAfter->bottom.value_or(0));
    if (action.zones.bottom) most = std::max(most, action.zones.bottom->high.value_or(0));
    return {left, right, std::ceil(most + 0.3)};
}

double strokeHeight(const DrawnStyle& style, bool withPlan) {
    return style.u(kOverBars + kRead + (withPlan ? kBetween + kAfter : 0) + kUnderBars + kTicks);
}

void paintStroke(QPainter& painter, const QRectF& box, const NoteAction& action, const Piano& piano,
                 const DrawnStyle& style) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const KeyWay way = KeyWay::over(box.left() + style.u(kNames), box.right() - style.u(4), action);
    const double height = strokeHeight(style, action.strokeAfter.has_value()) - style.u(kTicks);
    const QRectF field(way.x(0), box.top(), way.x(way.most) - way.x(0), height);
    for (const auto& band : {action.zones.moves, action.zones.damperStirs, action.zones.letOff, action.zones.bottom})
        shade(painter, style, way, field, band);
    paintTicks(painter, style, way, field);

    const QRectF read(field.left(), field.top() + style.u(kOverBars), field.width(), style.u(kRead));
    painter.setPen(ink(style.look.ink));
    drawnText(painter, style, style.bold, {box.left(), read.center().y() + style.u(1.2)}, words::strokeRowName(false));
    paintRead(painter, style, way, read, action);
    paintStrokeLabels(painter, style, way, read, action, piano);
    if (action.strokeAfter) {
        const QRectF after(field.left(), read.bottom() + style.u(kBetween), field.width(), style.u(kAfter));
        painter.setPen(ink(style.look.ink));
        drawnText(painter, style, style.plain, {box.left(), after.center().y() + style.u(1.2)},
                  words::strokeRowName(true));
        paintAfter(painter, style, way, after, *action.strokeAfter);
    }
    painter.restore();
}

} // namespace hammerline
