#include "ui/widgets/stroke_distance.h"

#include "ui/widgets/marks.h"
#include "ui/words/distance_parts.h"
#include "ui/words/words.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

// Of the box, from its top: the part, the slip below it, its figures; and of its width the least of the part.
constexpr double kPartHigh = 0.62, kSlipTop = 0.67, kSlipHigh = 0.19, kFigures = 0.13, kPartShare = 0.24;
constexpr double kAround = 1.6; // zones that are shown on either side of the zone

class Distance {
public:
    Distance(QPainter& painter, const QRectF& box, const DistancePicture& picture, const DrawnStyle& style)
        : m_painter(painter)
        , m_box(box)
        , m_picture(picture)
        , m_style(style)
        , m_parts(words::partsOfDistance(picture.id)) {
        const Kind kind = row(picture.id).kind;
        m_aim = toTrade(picture.zone.nominal, kind);
        m_low = picture.zone.low ? toTrade(*picture.zone.low, kind) : m_aim;
        m_high = picture.zone.high ? toTrade(*picture.zone.high, kind) : m_aim;
        const double span = std::max(m_high - m_low, 0.2);
        m_cut = m_low > kAround * span; // a long way: only its last part is shown
        const double around = m_cut ? 1 : kAround;
        m_far = m_high + around * span;
        m_near = m_low - around * span;
        if (m_low >= 0 && !m_cut) m_near = 0;
        // beside the fixed part its name stands, and the figure where the gap is too small for it
        const double beside = std::max(drawnWidth(style.plain, m_parts.fixed), drawnWidth(style.strong, figure()));
        m_right = box.right() - beside - style.u(4);
        m_left = box.left() + (m_right - box.left()) * kPartShare; // room for the part that moves
    }

    void paint() {
        m_painter.save();
        m_painter.setRenderHint(QPainter::Antialiasing);
        const double at = x(m_picture.value.value_or(m_aim));
        paintSlip();
        paintExcess(at);
        paintMoving(at);
        paintFixed();
        paintArrow(at);
        m_painter.restore();
    }

private:
    double x(double value) const {
        const double share = (std::clamp(value, m_near, m_far) - m_near) / (m_far - m_near);
        return m_right - share * (m_right - m_left);
    }
    double slipTop() const { return m_box.top() + m_box.height() * kSlipTop; }
    double slipHigh() const { return m_box.height() * kSlipHigh; }
    QString figure() const { return m_picture.figure.isEmpty() ? QStringLiteral("0.00") : m_picture.figure; }

    /// Paper is paper in both themes.
    void paintSlip() {
        const double top = slipTop(), high = slipHigh(), from = x(m_high), low = x(m_low);
        QPainterPath slip(QPointF(m_right, top));
        slip.lineTo(m_right, top + high);
        const double tooth = m_style.u(1.4);
        slip.lineTo(from, top + high);
        for (int i = 0; i < 4; ++i) { // torn
            const double y = top + high - (i + 0.5) * high / 4;
            slip.lineTo(from + (i % 2 == 0 ? tooth : -tooth * 0.2), y);
        }
        slip.lineTo(from, top);
        slip.closeSubpath();
        m_painter.setPen(inkPen(m_style, 0.3));
        m_painter.setBrush(ink(m_style.look.naturalTop));
        m_painter.drawPath(slip);
        if (m_picture.zone.low && low < m_right)
            m_painter.fillRect(QRectF(low, top, m_right - low, high), QColor(0, 0, 0, 34));
        m_painter.setPen(QPen(ink(m_style.look.sharpTop), m_style.u(0.5)));
        if (m_picture.zone.low) m_painter.drawLine(QPointF(low, top), QPointF(low, top + high));
        m_painter.setPen(QPen(ink(m_style.look.sharpTop), m_style.u(0.9)));
        m_painter.drawLine(QPointF(x(m_aim), top), QPointF(x(m_aim), top + high));
        const QString good = words::goodOnSlip();
        const double wide = drawnWidth(m_style.plain, good);
        const double between = (from + m_style.u(1.4) + x(m_aim)) / 2;
        const bool crossed = m_picture.value && std::abs(x(*m_picture.value) - between) < wide / 2 + m_style.u(1);
        if (!crossed && wide + m_style.u(3) < x(m_aim) - from - m_style.u(1.4)) {
            m_painter.setPen(ink(m_style.look.sharpTop));
            const double middle = (from + m_style.u(1.4) + x(m_aim)) / 2;
            drawnText(m_painter, m_style, m_style.plain,
                      {middle, top + high / 2 + QFontMetricsF(m_style.plain).xHeight() / 2}, good, Qt::AlignHCenter);
        }
        paintFigures(top + high);
    }

    void paintFigures(double top) {
        const double base = top + m_box.height() * kFigures;
        double taken = -1e9;
        const auto figure = [&](double value, const QFont& font, QRgb colour, bool always) {
            const QString text = words::shown(m_picture.id, fromTrade(value, row(m_picture.id).kind));
            const double wide = drawnWidth(font, text), at = x(value);
            if (!always && at - wide / 2 < taken + m_style.u(2)) return;
            m_painter.setPen(ink(colour));
            drawnText(m_painter, m_style, font, {at, base}, text, Qt::AlignHCenter);
            taken = at + wide / 2;
        };
        const double aimLeft = x(m_aim) - drawnWidth(m_style.bold, QStringLiteral("00.0")) / 2;
        const double half = drawnWidth(m_style.plain, QStringLiteral("00.0")) / 2;
        if (m_picture.zone.high && x(m_high) + half < aimLeft) figure(m_high, m_style.plain, m_style.look.ink2, true);
        figure(m_aim, m_style.bold, m_style.look.ink, true);
        if (m_picture.zone.low) figure(m_low, m_style.plain, m_style.look.ink2, false);
    }

    void paintExcess(double at) {
        if (!m_picture.value || !m_picture.judged) return;
        const int marks = m_picture.judged->marks();
        if (marks == 0 || m_picture.judged->word) return;
        const bool high = m_picture.judged->verdict == Verdict::high;
        const RampStop& stop = m_style.look.stop(marks, high);
        const double edge = x(high ? m_high : m_low);
        const QRectF block(QPointF(std::min(edge, at), slipTop() + slipHigh() * 0.14),
                           QPointF(std::max(edge, at), slipTop() + slipHigh() * 0.86));
        m_painter.setPen(inkPen(m_style, 0.4));
        m_painter.setBrush(ink(stop.fill));
        m_painter.drawRect(block);
        const double size = slipHigh() * 0.34, wide = triangleWidth(marks, size);
        if (wide + m_style.u(1) < block.width())
            paintTriangles(m_painter, block.center().x() - wide / 2, block.center().y(), marks, high, ink(stop.text),
                           size);
    }

    /// A hammer's crown, or the flat end of a part; in outline where nothing is typed.
    void paintMoving(double at) {
        const bool known = m_picture.value.has_value();
        const double half = m_box.height() * kPartHigh / 2, middle = m_box.top() + half;
        const double back = m_box.left();
        QPainterPath part;
        if (m_parts.crown) {
            part.moveTo(back, middle - half);
            part.cubicTo(QPointF(at - half * 0.7, middle - half), QPointF(at, middle - half * 0.55),
                         QPointF(at, middle));
            part.cubicTo(QPointF(at, middle + half * 0.55), QPointF(at - half * 0.7, middle + half),
                         QPointF(back, middle + half));
        } else {
            part.addRect(QRectF(QPointF(back, middle - half), QPointF(at, middle + half)));
        }
        m_painter.setPen(known ? inkPen(m_style, 0.7) : dashedPen(m_style, 0.5));
        m_painter.setBrush(known ? QBrush(ink(m_parts.crown ? m_style.look.felt : m_style.look.paper2)) : Qt::NoBrush);
        m_painter.drawPath(part);
        if (!m_parts.crown || !known) return;
        m_painter.setBrush(ink(m_style.look.paper2)); // the wood in the felt
        m_painter.setPen(inkPen(m_style, 0.4));
        m_painter.drawPolygon(QPolygonF{{QPointF(back, middle - half * 0.62), QPointF(at - half * 1.05, middle),
                                         QPointF(back, middle + half * 0.62)}});
    }

    void paintFixed() {
        const double wide = m_style.u(2);
        const QRectF bar(m_right, m_box.top(), wide, m_box.height() * (kSlipTop + kSlipHigh + 0.02));
        m_painter.fillRect(bar, ink(m_style.look.ink));
        m_painter.setPen(ink(m_style.look.ink2));
        drawnText(m_painter, m_style, m_style.plain, {m_right + wide + m_style.u(2), m_box.top() + m_style.u(6)},
                  m_parts.fixed);
        if (!m_cut) return;
        // the way goes on: two slanted strokes through the slip at the fixed part
        m_painter.setPen(QPen(ink(m_style.look.sharpTop), m_style.u(0.6)));
        for (const double off : {2.5, 4.5}) {
            const double at = m_right - m_style.u(off);
            m_painter.drawLine(QPointF(at - m_style.u(1), slipTop() + slipHigh()),
                               QPointF(at + m_style.u(1), slipTop()));
        }
    }

    void paintArrow(double at) {
        if (!m_picture.value) return;
        const double y = m_box.top() + m_box.height() * kPartHigh / 2, head = m_style.u(3.2);
        m_painter.setPen(inkPen(m_style, 0.5)); // down to the slip
        m_painter.drawLine(QPointF(at, y), QPointF(at, slipTop()));
        m_painter.setPen(QPen(ink(m_style.look.sharpTop), m_style.u(0.5)));
        const bool onSlip = at >= x(m_high);
        if (onSlip) m_painter.drawLine(QPointF(at, slipTop()), QPointF(at, slipTop() + slipHigh()));
        const double wide = drawnWidth(m_style.strong, m_picture.figure) + m_style.u(4);
        const double middle = (at + m_right) / 2, gap = m_right - at;
        const double base = y + QFontMetricsF(m_style.strong).capHeight() / 2;
        const bool roomForText = gap > wide + 4 * head, roomForArrow = gap > 4 * head;
        const double text = roomForText ? wide / 2 : 0;
        for (const auto& [tip, tail, way] :
             {std::tuple{at, middle - text, 1.0}, std::tuple{m_right, middle + text, -1.0}}) {
            if (!roomForArrow) continue;
            m_painter.setPen(inkPen(m_style, 1.1));
            m_painter.drawLine(QPointF(tip + way * head, y), QPointF(tail, y));
            m_painter.setPen(Qt::NoPen);
            m_painter.setBrush(ink(m_style.look.ink));
            m_painter.drawPolygon(QPolygonF{{QPointF(tip, y), QPointF(tip + way * head * 1.4, y - head * 0.7),
                                             QPointF(tip + way * head * 1.4, y + head * 0.7)}});
        }
        m_painter.setPen(ink(m_style.look.ink));
        if (roomForText)
            drawnText(m_painter, m_style, m_style.strong, {middle, base}, m_picture.figure, Qt::AlignHCenter);
        else
            drawnText(m_painter, m_style, m_style.strong, {m_right + m_style.u(4), base}, m_picture.figure);
    }

    QPainter& m_painter;
    QRectF m_box;
    const DistancePicture& m_picture;
    const DrawnStyle& m_style;
    words::DistanceParts m_parts;
    double m_aim = 0, m_low = 0, m_high = 0, m_near = 0, m_far = 1, m_left = 0, m_right = 1;
    bool m_cut = false;
};

} // namespace

void paintDistance(QPainter& painter, const QRectF& box, const DistancePicture& picture, const DrawnStyle& style) {
    Distance(painter, box, picture, style).paint();
}

} // namespace hammerline
