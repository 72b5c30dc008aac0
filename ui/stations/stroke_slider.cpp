#include "ui/stations/stroke_slider.h"

#include "ui/words/moments.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {
constexpr double kLeastScale = 11; // mm
} // namespace

StrokeSlider::StrokeSlider(const QRectF& box, const DrawnNote& note)
    : m_box(box), m_note(note), m_most(std::max(kLeastScale, std::ceil(note.linkage.distances().dip + 0.3))) {}

double StrokeSlider::x(double mm) const {
    return m_box.left() + m_box.width() * mm / m_most;
}

double StrokeSlider::mm(double x) const {
    return (x - m_box.left()) / m_box.width() * m_most;
}

void StrokeSlider::paintScale(QPainter& painter, const DrawnStyle& style) const {
    const double line = lineAt(style);
    painter.fillRect(QRectF(x(0), line - 1, x(m_most) - x(0), 2), ink(style.look.ink));
    painter.setPen(ink(style.look.ink2));
    for (int mm = 0; mm <= m_most; ++mm) {
        painter.fillRect(QRectF(x(mm) - 0.5, line, 1, style.u(1)), ink(style.look.ink));
        drawnText(painter, style, style.plain, {x(mm), line + style.u(5)}, QString::number(mm), Qt::AlignHCenter);
    }
    double taken = -1e6;
    for (const Moment each : momentsOf(m_note)) {
        if (each == Moment::check) continue;
        const double at = x(travelAt(m_note, each));
        painter.fillRect(QRectF(at - 1, line - style.u(2), 2, style.u(2)), ink(style.look.ink));
        const QString name = words::momentName(each);
        const double half = drawnWidth(style.plain, name) / 2;
        if (at - half < taken) continue;
        painter.setPen(ink(style.look.ink2));
        drawnText(painter, style, style.plain, {at, line - style.u(3)}, name, Qt::AlignHCenter);
        taken = at + half + style.u(2);
    }
}

void StrokeSlider::paintHandle(QPainter& painter, const DrawnStyle& style, double travel, bool focused) const {
    const QRectF handle(x(travel) - style.u(1.3), lineAt(style) - style.u(2.8), style.u(2.6), style.u(5.6));
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink(style.look.ink));
    painter.drawRoundedRect(handle, style.u(0.6), style.u(0.6));
    if (!focused) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(ink(style.look.ring), 2));
    painter.drawRoundedRect(handle.adjusted(-3, -3, 3, 3), style.u(1), style.u(1));
}

} // namespace hammerline
