#include "ui/print/gauge_shapes.h"

namespace hammerline::print {

namespace {
constexpr Type kTickFigure{8};
}

void paintTicks(Canvas& c, double x, double y, int length, int firstFigure) {
    for (int mm = 1; mm < length; ++mm) {
        const bool ten = mm % 10 == 0, five = mm % 5 == 0;
        c.line(x + mm, y, x + mm, y + (ten ? 4.2 : five ? 3 : 2), 0.12);
        if (ten && mm >= firstFigure) c.text(x + mm, y + 7, QString::number(mm), kTickFigure, Align::centre);
    }
}

void paintRule(Canvas& c, double x, double y, int length, int firstFigure) {
    const double half = kGaugeLine / 2;
    c.line(x, y, x + length, y, kGaugeLine);
    for (const double end : {x + half, x + length - half})
        c.line(end, y - 1.5, end, y + 4.2, kGaugeLine);
    paintTicks(c, x, y, length, firstFigure);
}

void paintUprightLine(Canvas& c, double x, double y, double length) {
    const double half = kGaugeLine / 2;
    c.line(x, y, x, y + length, kGaugeLine);
    for (const double end : {y + half, y + length - half})
        c.line(x - 2.5, end, x + 2.5, end, kGaugeLine);
    c.text(x - 1.5, y + length / 2, QStringLiteral("100"), {8}, Align::right);
}

void paintStepGauge(Canvas& c, double x, double y, double wide, double arm, double step) {
    const double in = kGaugeLine / 2, leg = wide * 0.55;
    const std::array<QPointF, 6> corners{QPointF(x + in, y + in),
                                         QPointF(x + wide - in, y + in),
                                         QPointF(x + wide - in, y + arm - in),
                                         QPointF(x + leg - in, y + arm - in),
                                         QPointF(x + leg - in, y + arm + step - in),
                                         QPointF(x + in, y + arm + step - in)};
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const QPointF from = corners[i], to = corners[(i + 1) % corners.size()];
        const bool level = from.y() == to.y();
        const double over = (level ? to.x() > from.x() : to.y() > from.y()) ? in : -in; // corners closed
        if (level)
            c.line(from.x() - over, from.y(), to.x() + over, to.y(), kGaugeLine);
        else
            c.line(from.x(), from.y() - over, to.x(), to.y() + over, kGaugeLine);
    }
}

void paintNick(Canvas& c, double x, double top, double height) {
    c.line(x, top, x, top + height, kGaugeLine);
    c.fill({x - 0.4, top + height - 1.4, 0.8, 1.4});
}

} // namespace hammerline::print
