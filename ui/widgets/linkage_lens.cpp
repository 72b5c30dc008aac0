#include "ui/widgets/linkage_lens.h"

#include "ui/widgets/linkage_shapes.h"

#include <algorithm>

namespace hammerline {

namespace {

using kinematics::Linkage;
using kinematics::Pose;

constexpr double kLens = 10;       // times the drawing
constexpr double kLensRadius = 22; // units

class Lens {
public:
    Lens(QPainter& painter, const DrawnStyle& style, QPointF centre, double scale)
        : m_painter(painter)
        , m_style(style)
        , m_centre(centre)
        , m_scale(scale * kLens)
        , m_radius(style.u(kLensRadius)) {}

    void paint(const LinkageScene& scene) {
        QPainterPath circle;
        circle.addEllipse(m_centre, m_radius, m_radius);
        m_painter.save();
        m_painter.setClipPath(circle);
        m_painter.fillPath(circle, ink(m_style.look.paper));
        m_stringX = m_centre.x() + m_radius * 0.55;
        paintZone(scene);
        paintHead(*scene.body, false);
        if (scene.outline) paintHead(*scene.outline, true);
        m_painter.fillRect(QRectF(m_stringX, m_centre.y() - m_radius, m_style.u(1), 2 * m_radius),
                           ink(m_style.look.ink));
        m_painter.restore();
        m_painter.setBrush(Qt::NoBrush);
        m_painter.setPen(inkPen(m_style, 0.5));
        m_painter.drawEllipse(m_centre, m_radius, m_radius);
        paintDistance(scene);
        m_painter.setPen(ink(m_style.look.ink));
        drawnText(m_painter, m_style, m_style.bold, {m_centre.x(), m_centre.y() - m_radius - m_style.u(2)},
                  scene.lensTitle, Qt::AlignHCenter);
        m_painter.setPen(ink(m_style.look.ink2));
        drawnText(m_painter, m_style, m_style.plain, {m_centre.x(), m_centre.y() + m_radius + m_style.u(5)},
                  scene.lensRemark, Qt::AlignHCenter);
    }

private:
    double x(double gap) const { return m_stringX - gap * m_scale; }

    void paintZone(const LinkageScene& scene) {
        if (!scene.letOffZone) return;
        const double low = scene.letOffZone->low.value_or(0), high = scene.letOffZone->high.value_or(8);
        const QRectF strip(x(high), m_centre.y() - m_style.u(7), x(low) - x(high), m_style.u(14));
        m_painter.fillRect(strip, zoneColour(m_style));
        m_painter.setPen(QPen(ink(m_style.look.edge), m_style.u(0.3)));
        m_painter.drawRect(strip);
    }

    /// The head at its own let-off, the string upright beside it whatever way it lies in the piano.
    void paintHead(const DrawnNote& note, bool broken) {
        const Linkage& linkage = note.linkage;
        const Pose escape = linkage.at(std::min(linkage.distances().escapeAt, linkage.distances().dip));
        QTransform view;
        view.translate(x(escape.gap), m_centre.y());
        view.scale(m_scale, -m_scale);
        if (linkage.build().grand) view.rotate(-90);
        view.translate(-escape.crown.x, -escape.crown.y);
        const QPainterPath head = view.map(hammerFelt(linkage, escape));
        m_painter.setBrush(broken ? QBrush(Qt::NoBrush) : QBrush(ink(m_style.look.felt)));
        m_painter.setPen(broken ? dashedPen(m_style, 0.4) : inkPen(m_style, 0.5));
        m_painter.drawPath(head);
    }

    void paintDistance(const LinkageScene& scene) {
        const Linkage& linkage = scene.body->linkage;
        const Pose escape = linkage.at(std::min(linkage.distances().escapeAt, linkage.distances().dip));
        const double from = std::max(x(escape.gap), m_centre.x() - m_radius * 0.8), y = m_centre.y() + m_style.u(11);
        m_painter.setPen(inkPen(m_style, 0.4));
        m_painter.drawLine(QPointF(from, y), QPointF(m_stringX, y));
        m_painter.drawLine(QPointF(from, y - m_style.u(1.5)), QPointF(from, y + m_style.u(1.5)));
        const double wide = drawnWidth(m_style.strong, scene.lensFigure);
        const double middle = (from + m_stringX) / 2;
        const QRectF ground(middle - wide / 2 - m_style.u(1), y + m_style.u(0.8), wide + m_style.u(2), m_style.u(5.4));
        m_painter.fillRect(ground, ink(m_style.look.paper));
        m_painter.setPen(ink(m_style.look.ink));
        drawnText(m_painter, m_style, m_style.strong, {middle, y + m_style.u(5.2)}, scene.lensFigure, Qt::AlignHCenter);
    }

    QPainter& m_painter;
    const DrawnStyle& m_style;
    QPointF m_centre;
    double m_scale, m_radius, m_stringX = 0;
};

} // namespace

void paintLens(QPainter& painter, const QRectF& box, const LinkageScene& scene, const DrawnStyle& style, double scale) {
    const double radius = style.u(kLensRadius);
    const QPointF centre(box.left() + radius + style.u(8), box.top() + radius + style.u(9));
    Lens(painter, style, centre, scale).paint(scene);
}

} // namespace hammerline
