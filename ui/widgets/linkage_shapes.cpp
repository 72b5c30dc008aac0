#include "ui/widgets/linkage_shapes.h"

#include <cmath>
#include <numbers>

namespace hammerline {

namespace shapes {

QTransform placed(kinematics::Point centre, double angle) {
    QTransform out;
    out.translate(centre.x, centre.y);
    out.rotateRadians(angle);
    return out;
}

QPainterPath polygon(std::initializer_list<QPointF> points) {
    QPainterPath out;
    out.addPolygon(QPolygonF(QList<QPointF>(points)));
    out.closeSubpath();
    return out;
}

QPainterPath box(double left, double bottom, double right, double top) {
    QPainterPath out;
    out.addRect(QRectF(left, bottom, right - left, top - bottom));
    return out;
}

QPainterPath disc(double x, double y, double radius) {
    QPainterPath out;
    out.addEllipse(QPointF(x, y), radius, radius);
    return out;
}

namespace {

constexpr double kKeyHigh = 22, kTopHigh = 2.6, kFelt = 4, kBlock = 12; // mm
constexpr double kFrontPin = 0.91;                                      // of the front's arm

/// A felt under the key on a rail of wood that stands on the bed.
void addRail(std::vector<DrawnPart>& out, double x, double top, double bed, double half) {
    out.push_back({box(x - half, top - kFelt, x + half, top), PartLook::felt});
    out.push_back({box(x - half - 4, bed, x + half + 4, top - kFelt), PartLook::wood});
}

/// Of the key at its front pin, key down.
double bottomAt(const kinematics::Linkage& linkage) {
    return -linkage.distances().dip * kFrontPin;
}

double bedAt(const kinematics::Linkage& linkage) {
    return bottomAt(linkage) - kFelt - kBlock;
}

} // namespace

void addKeyBed(std::vector<DrawnPart>& out, const kinematics::Linkage& linkage, double back) {
    const double front = linkage.build().front, bed = bedAt(linkage);
    out.push_back({box(-front - 8, bed - 3, back + 22, bed), PartLook::typical});
    addRail(out, -front * kFrontPin, bottomAt(linkage), bed, 9);
    addRail(out, 0, 0, bed, 10);
    addRail(out, back, 0, bed, 13);
}

void addKey(std::vector<DrawnPart>& out, const kinematics::Linkage& linkage, const kinematics::Pose& pose,
            double back) {
    const kinematics::Build& build = linkage.build();
    const double front = build.front, pin = front * kFrontPin;
    const double bed = bedAt(linkage);
    const QTransform key = placed({0, 0}, pose.key);
    const double rear = std::max(back, build.capstan.x) + 16;
    out.push_back({key.map(box(-front + 1, 0, rear, kKeyHigh)), PartLook::wood, PartName::key, true});
    out.push_back(
        {key.map(box(-front, kKeyHigh, -front + 125, kKeyHigh + kTopHigh)), PartLook::wood, PartName::none, true});
    QPainterPath pins;
    pins.moveTo(-pin, bed);
    pins.lineTo(-pin, 8);
    pins.moveTo(0, bed);
    pins.lineTo(0, kKeyHigh + 4);
    out.push_back({pins, PartLook::line});
    QPainterPath post;
    post.moveTo(build.capstan.x, kKeyHigh);
    post.lineTo(build.capstan.x, build.capstan.y - 4);
    out.push_back({key.map(post), PartLook::line, PartName::none, true});
    const double x = build.capstan.x, y = build.capstan.y;
    out.push_back({key.map(polygon({{x - 6, y}, {x + 6, y}, {x + 5, y - 4.5}, {x - 5, y - 4.5}})), PartLook::metal,
                   PartName::capstan, true});
}

} // namespace shapes

std::vector<DrawnPart> partsOf(const kinematics::Linkage& linkage, const kinematics::Pose& pose, bool checked) {
    return linkage.build().grand ? grandParts(linkage, pose, checked) : uprightParts(linkage, pose, checked);
}

/// The head's felt in the frame of the string: crown at (0, 0), pointing along +x.
static QPainterPath feltOutline() {
    QPainterPath felt(QPointF(0, 0));
    felt.cubicTo(QPointF(0, 6), QPointF(-10, 14.5), QPointF(-26, 15));
    felt.quadTo(QPointF(-36, 15), QPointF(-45, 9));
    felt.lineTo(-16, 0);
    felt.lineTo(-45, -9);
    felt.quadTo(QPointF(-36, -15), QPointF(-26, -15));
    felt.cubicTo(QPointF(-10, -14.5), QPointF(0, -6), QPointF(0, 0));
    return felt;
}

QPainterPath hammerFelt(const kinematics::Linkage& linkage, const kinematics::Pose& pose) {
    const kinematics::Point from = pose.crown - pose.hammerCentre;
    const double turned = kinematics::angleOf(from) - kinematics::angleOf(linkage.build().crown);
    const double toString = linkage.build().grand ? std::numbers::pi / 2 : 0;
    return shapes::placed(pose.crown, turned + toString).map(feltOutline());
}

} // namespace hammerline
