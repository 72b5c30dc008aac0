#include "ui/widgets/linkage_painter.h"

#include "ui/widgets/linkage_shapes.h"
#include "ui/words/linkage_names.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

using kinematics::Linkage;
using kinematics::Pose;

constexpr double kLens = 10;       // times the drawing
constexpr double kLensRadius = 22; // units

/// What must be seen of the action, mm.
QRectF worldOf(const Linkage& linkage) {
    const double front = -linkage.build().front - 14;
    const double bed = -linkage.distances().dip - 24;
    if (linkage.build().grand)
        return {front, bed, linkage.build().capstan.x + 190 - front, linkage.stringAt() + 34 - bed};
    return {front, bed, linkage.stringAt() + 12 - front, (linkage.build().over ? 360.0 : 306.0) - bed};
}

QTransform toScreen(const QRectF& world, const QRectF& box) {
    const double scale = std::min(box.width() / world.width(), box.height() / world.height());
    QTransform out;
    out.translate(box.right() - scale * world.right(), box.bottom() + scale * world.top());
    out.scale(scale, -scale);
    return out;
}

QColor fillOf(const DrawnStyle& style, PartLook look) {
    switch (look) {
    case PartLook::felt:
        return ink(style.look.felt);
    case PartLook::metal:
        return ink(style.look.ink);
    case PartLook::typical:
        return ink(style.look.paper);
    case PartLook::wood:
    case PartLook::line:
        break;
    }
    return ink(style.look.paper2);
}

void paintPart(QPainter& painter, const DrawnStyle& style, const DrawnPart& part, const QTransform& view) {
    const QPainterPath path = view.map(part.outline);
    if (part.look == PartLook::line) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(inkPen(style, 0.5));
        painter.drawPath(path);
        return;
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(fillOf(style, part.look));
    painter.drawPath(path);
    painter.setBrush(Qt::NoBrush);
    if (part.look == PartLook::typical) drawnHatch(painter, style, path, ink(style.look.edge));
    painter.setPen(inkPen(style, 0.3));
    painter.drawPath(path);
}

/// Where the name of a part stands: beside its outline.
struct NamePlace {
    PartName name;
    Qt::Alignment side; // left of it: the text ends there
    double dx, dy;      // mm from the middle of that side
    double room = 1e6;  // mm until the next part; a name that is longer (large type) is left out
};

constexpr std::array kUprightNames{
    NamePlace{PartName::hammer, Qt::AlignRight, -4, 6},    NamePlace{PartName::damper, Qt::AlignRight, -3, 6, 42},
    NamePlace{PartName::backCheck, Qt::AlignRight, -4, 0}, NamePlace{PartName::letOffButton, Qt::AlignRight, -8, 0},
    NamePlace{PartName::wippen, Qt::AlignRight, -4, -8},   NamePlace{PartName::jack, Qt::AlignLeft, 1, -12},
    NamePlace{PartName::capstan, Qt::AlignLeft, 6, -2},    NamePlace{PartName::restRail, Qt::AlignRight, -4, 0},
    NamePlace{PartName::string, Qt::AlignRight, -6, 98},
};

/// An overdamper's wire stands between the parts and the player's side: their names are beyond it.
constexpr std::array kOverNames{
    NamePlace{PartName::hammer, Qt::AlignRight, -48, 2},    NamePlace{PartName::damper, Qt::AlignRight, -3, -4},
    NamePlace{PartName::backCheck, Qt::AlignRight, -14, 0}, NamePlace{PartName::letOffButton, Qt::AlignRight, -15, 6},
    NamePlace{PartName::wippen, Qt::AlignRight, -4, -8},    NamePlace{PartName::jack, Qt::AlignLeft, 1, -12},
    NamePlace{PartName::capstan, Qt::AlignLeft, 6, -2},     NamePlace{PartName::restRail, Qt::AlignRight, -28, 0},
    NamePlace{PartName::string, Qt::AlignRight, -6, -40},
};

constexpr std::array kGrandNames{
    NamePlace{PartName::hammer, Qt::AlignRight, -14, 20},    NamePlace{PartName::damper, Qt::AlignLeft, 4, 0},
    NamePlace{PartName::backCheck, Qt::AlignRight, -6, -12}, NamePlace{PartName::letOffButton, Qt::AlignRight, -8, 0},
    NamePlace{PartName::wippen, Qt::AlignRight, -4, -10},    NamePlace{PartName::capstan, Qt::AlignLeft, 6, -2},
    NamePlace{PartName::string, Qt::AlignLeft, -134, 7},
};

template <std::size_t N>
void paintNames(QPainter& painter, const DrawnStyle& style, const std::vector<DrawnPart>& parts, const QTransform& view,
                const std::array<NamePlace, N>& places) {
    painter.setPen(ink(style.look.ink2));
    for (const DrawnPart& part : parts) {
        const auto place = std::ranges::find(places, part.name, &NamePlace::name);
        if (part.name == PartName::none || place == places.end()) continue;
        const QString name = words::partOfDrawing(part.name);
        if (drawnWidth(style.plain, name) > place->room * view.m11()) continue;
        const QRectF box = part.outline.boundingRect();
        const double x = place->side == Qt::AlignRight ? box.left() : box.right();
        const QPointF at = view.map(QPointF(x + place->dx, box.center().y() + place->dy));
        drawnText(painter, style, style.plain, {at.x(), at.y() + style.u(1)}, name, place->side);
    }
}

/// The key of the outline and its hammer: enough to see what the work changes.
bool inOutline(PartName name) {
    return name == PartName::key || name == PartName::hammer || name == PartName::wippen;
}

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

void paintLinkage(QPainter& painter, const QRectF& box, const LinkageScene& scene, const DrawnStyle& style) {
    if (!scene.body) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const Linkage& linkage = scene.body->linkage;
    const QRectF world = worldOf(linkage);
    const QTransform view = toScreen(world, box);
    const Pose pose = scene.caught ? linkage.checked() : linkage.at(scene.travel);
    const auto parts = partsOf(linkage, pose, scene.body->checks);
    for (const DrawnPart& part : parts)
        paintPart(painter, style, part, view);
    if (scene.outline) {
        const Linkage& other = scene.outline->linkage;
        const Pose was = scene.caught ? other.checked() : other.at(scene.travelOfOutline);
        painter.setPen(dashedPen(style, 0.3));
        painter.setBrush(Qt::NoBrush);
        for (const DrawnPart& part : partsOf(other, was, scene.outline->checks))
            if (part.moves && inOutline(part.name)) painter.drawPath(view.map(part.outline));
        painter.drawPath(view.map(hammerFelt(other, was)));
    }
    if (scene.names && linkage.build().grand) paintNames(painter, style, parts, view, kGrandNames);
    const bool over = linkage.build().over, under = !over && !linkage.build().grand;
    if (scene.names && over) paintNames(painter, style, parts, view, kOverNames);
    if (scene.names && under) paintNames(painter, style, parts, view, kUprightNames);
    if (scene.lens) {
        const double radius = style.u(kLensRadius);
        const double scale = std::abs(view.m22());
        const QPointF centre(box.left() + radius + style.u(8), box.top() + radius + style.u(9));
        Lens(painter, style, centre, scale).paint(scene);
    }
    painter.restore();
}

} // namespace hammerline
