#include "ui/widgets/linkage_painter.h"

#include "ui/widgets/linkage_lens.h"
#include "ui/widgets/linkage_shapes.h"
#include "ui/words/linkage_names.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace hammerline {

namespace {

using kinematics::Linkage;
using kinematics::Pose;

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
    NamePlace{PartName::hammer, Qt::AlignRight, -4, 6},    NamePlace{PartName::damper, Qt::AlignRight, -3, 6, 38},
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

std::span<const NamePlace> namePlaces(const Linkage& linkage) {
    if (linkage.build().grand) return kGrandNames;
    if (linkage.build().over) return kOverNames;
    return kUprightNames;
}

/// Of the parts that move, or of those that do not.
void paintNames(QPainter& painter, const DrawnStyle& style, const std::vector<DrawnPart>& parts, const QTransform& view,
                std::span<const NamePlace> places, bool moving) {
    painter.setPen(ink(style.look.ink2));
    for (const DrawnPart& part : parts) {
        if (part.name == PartName::none || part.moves != moving) continue;
        const auto place = std::ranges::find(places, part.name, &NamePlace::name);
        if (place == places.end()) continue;
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

/// One linkage at one moment, seen through the box.
struct Seen {
    QTransform view;
    std::vector<DrawnPart> parts;
    std::vector<DrawnPart>::const_iterator moving; // the first part that does; before it all stands still behind it
};

Seen seen(const QRectF& box, const LinkageScene& scene) {
    const Linkage& linkage = scene.body->linkage;
    const Pose pose = scene.caught ? linkage.checked() : linkage.at(scene.travel);
    Seen out{
        .view = toScreen(worldOf(linkage), box), .parts = partsOf(linkage, pose, scene.body->checks), .moving = {}};
    out.moving = std::ranges::find(out.parts, true, &DrawnPart::moves);
    return out;
}

void paintOutline(QPainter& painter, const LinkageScene& scene, const DrawnStyle& style, const QTransform& view) {
    const Linkage& other = scene.outline->linkage;
    const Pose was = scene.caught ? other.checked() : other.at(scene.travelOfOutline);
    for (const DrawnPart& part : partsOf(other, was, scene.outline->checks))
        if (part.moves && inOutline(part.name)) drawnBroken(painter, style, view.map(part.outline), 0.3);
    drawnBroken(painter, style, view.map(hammerFelt(other, was)), 0.3);
}

void paintBehind(QPainter& painter, const QRectF& box, const LinkageScene& scene, const DrawnStyle& style,
                 const Seen& all) {
    for (auto part = all.parts.begin(); part != all.moving; ++part)
        paintPart(painter, style, *part, all.view);
    if (scene.names) paintNames(painter, style, all.parts, all.view, namePlaces(scene.body->linkage), false);
    if (scene.lens) paintLens(painter, box, scene, style, std::abs(all.view.m22()));
}

void paintMoved(QPainter& painter, const LinkageScene& scene, const DrawnStyle& style, const Seen& all) {
    for (auto part = all.moving; part != all.parts.end(); ++part)
        paintPart(painter, style, *part, all.view);
    if (scene.outline) paintOutline(painter, scene, style, all.view);
    if (scene.names) paintNames(painter, style, all.parts, all.view, namePlaces(scene.body->linkage), true);
}

} // namespace

void paintLinkageStill(QPainter& painter, const QRectF& box, const LinkageScene& scene, const DrawnStyle& style) {
    if (!scene.body) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintBehind(painter, box, scene, style, seen(box, scene));
    painter.restore();
}

void paintLinkageMoving(QPainter& painter, const QRectF& box, const LinkageScene& scene, const DrawnStyle& style) {
    if (!scene.body) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintMoved(painter, scene, style, seen(box, scene));
    painter.restore();
}

void paintLinkage(QPainter& painter, const QRectF& box, const LinkageScene& scene, const DrawnStyle& style) {
    if (!scene.body) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const Seen all = seen(box, scene);
    paintBehind(painter, box, scene, style, all);
    paintMoved(painter, scene, style, all);
    painter.restore();
}

} // namespace hammerline
