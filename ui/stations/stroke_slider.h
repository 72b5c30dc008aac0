// The way of the key as a slider: mm, the moments of the stroke, and the handle where the key stands.
#pragma once

#include "core/stroke/moments.h"
#include "ui/widgets/drawn_style.h"

namespace hammerline {

class StrokeSlider {
public:
    /// The box has the room beside the scale for half a label.
    StrokeSlider(const QRectF& box, const DrawnNote&);

    double x(double mm) const;
    double mm(double x) const;
    const QRectF& box() const { return m_box; }
    /// All but the handle.
    void paintScale(QPainter&, const DrawnStyle&) const;
    void paintHandle(QPainter&, const DrawnStyle&, double travel, bool focused) const;

private:
    double lineAt(const DrawnStyle& style) const { return m_box.top() + style.u(7); }

    QRectF m_box;
    const DrawnNote& m_note;
    double m_most = 0; // mm
};

} // namespace hammerline
