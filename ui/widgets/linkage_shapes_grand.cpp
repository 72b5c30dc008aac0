// The parts of a grand's action, seen from the bass end.
#include "ui/widgets/linkage_shapes.h"

#include <algorithm>

namespace hammerline {

namespace {

using kinematics::Linkage;
using kinematics::Point;
using kinematics::Pose;

constexpr double kTailX = 8, kTailY = -24; // from the foot of the head's line, hammer at the string
constexpr double kHeadRoot = -8;

double turnOfHammer(const Linkage& linkage, const Pose& pose) {
    return kinematics::angleOf(pose.crown - pose.hammerCentre) - kinematics::angleOf(linkage.build().crown);
}

void addGrandHammer(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose) {
    const kinematics::Build& build = linkage.build();
    const QTransform hammer = shapes::placed(pose.hammerCentre, turnOfHammer(linkage, pose));
    const double head = build.crown.x, up = build.crown.y;
    const Point h = pose.hammerCentre;
    out.push_back({shapes::polygon({{h.x - 34, h.y + 12}, {h.x - 34, h.y - 5}, {h.x, h.y - 5}, {h.x + 3, h.y + 5}}),
                   PartLook::typical});
    out.push_back({hammer.map(shapes::polygon({{-4, 4}, {-4, -4}, {34, -3}, {head, -2.6}, {head, 2.6}, {34, 3.4}})),
                   PartLook::wood, PartName::none, true});
    const QTransform shank = shapes::placed(pose.hammerCentre, pose.hammer);
    out.push_back({shank.map(shapes::disc(linkage.lever(), build.leather.y, build.knuckle)), PartLook::felt,
                   PartName::none, true});
    out.push_back({hammer.map(shapes::polygon({{head - 8, up - 45},
                                               {head, up - 16},
                                               {head + 8, up - 45},
                                               {head + kTailX + 1, kHeadRoot},
                                               {head + kTailX, kTailY},
                                               {head - 6, kTailY + 6},
                                               {head - 9, kHeadRoot}})),
                   PartLook::wood, PartName::hammer, true});
    out.push_back({hammerFelt(linkage, pose), PartLook::felt, PartName::none, true});
    out.push_back({shapes::disc(h.x, h.y, 2), PartLook::wood});
}

void addGrandWippen(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose) {
    const kinematics::Build& build = linkage.build();
    const Point jack = build.jack - build.wippen, heel = build.capstan - build.wippen;
    const QTransform wippen = shapes::placed(build.wippen, -pose.wippen);
    out.push_back(
        {wippen.map(shapes::box(heel.x - 9, heel.y, heel.x + 9, heel.y + 4)), PartLook::felt, PartName::none, true});
    out.push_back({wippen.map(shapes::polygon({{7, 5},
                                               {7, -5},
                                               {heel.x + 26, heel.y + 9},
                                               {heel.x + 9, heel.y + 4},
                                               {heel.x - 9, heel.y + 4},
                                               {jack.x - 14, jack.y - 4},
                                               {jack.x - 14, jack.y + 3},
                                               {jack.x + 8, jack.y + 6},
                                               {jack.x + 34, jack.y + 10},
                                               {jack.x + 60, jack.y + 4}})),
                   PartLook::wood, PartName::wippen, true});
    // the repetition lever: its post, and the lever beside the jack; no reading tells where it is
    out.push_back({wippen.map(shapes::polygon({{jack.x + 38, jack.y + 8},
                                               {jack.x + 46, jack.y + 8},
                                               {jack.x + 46, jack.y + 34},
                                               {jack.x + 40, jack.y + 34}})),
                   PartLook::typical, PartName::none, true});
    out.push_back({wippen.map(shapes::polygon({{jack.x - 10, jack.y + 42},
                                               {jack.x + 12, jack.y + 44},
                                               {jack.x + 64, jack.y + 30},
                                               {jack.x + 64, jack.y + 25},
                                               {jack.x + 12, jack.y + 37},
                                               {jack.x - 10, jack.y + 36}})),
                   PartLook::typical, PartName::repetitionLever, true});
    out.push_back({shapes::disc(build.wippen.x, build.wippen.y, 2.2), PartLook::wood});
    out.push_back({shapes::box(build.wippen.x - 8, build.wippen.y - 24, build.wippen.x + 12, build.wippen.y - 6),
                   PartLook::typical});
}

void addGrandJack(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose) {
    const double high = kinematics::lengthOf(pose.jackTop - pose.jackCentre);
    const QTransform jack = shapes::placed(pose.jackCentre, pose.jack);
    const Point toe = linkage.build().jackToe;
    out.push_back({jack.map(shapes::polygon({{toe.x - 3, toe.y - 5},
                                             {toe.x - 3, toe.y},
                                             {toe.x + 3, toe.y},
                                             {-5, 5},
                                             {-3.4, high},
                                             {3.4, high},
                                             {4.5, -4},
                                             {-4, -5}})),
                   PartLook::wood, PartName::jack, true});
    out.push_back({shapes::disc(pose.jackCentre.x, pose.jackCentre.y, 1.8), PartLook::wood});
}

/// On the key, where it meets the tail of the caught hammer.
void addGrandCheck(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose, bool checked) {
    const Pose caught = linkage.checked();
    const QTransform hammer = shapes::placed(caught.hammerCentre, turnOfHammer(linkage, caught));
    const QTransform back = shapes::placed({0, 0}, caught.key).inverted();
    const QPointF meets = back.map(hammer.map(QPointF(linkage.build().crown.x + kTailX, kTailY + 8)));
    const QTransform key = shapes::placed({0, 0}, pose.key);
    QPainterPath wire;
    wire.moveTo(meets.x() + 2, 22);
    wire.lineTo(meets.x() + 6, meets.y() - 12);
    out.push_back({key.map(wire), PartLook::line, PartName::none, true});
    const double x = meets.x(), y = meets.y();
    out.push_back({key.map(shapes::box(x + 3, y - 16, x + 9, y + 12)), checked ? PartLook::wood : PartLook::typical,
                   PartName::backCheck, true});
    out.push_back({key.map(shapes::box(x, y - 16, x + 3, y + 12)), PartLook::felt, PartName::none, true});
}

void addGrandDamper(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose) {
    const double x = pose.hammerCentre.x + linkage.build().crown.x + 61, string = linkage.stringAt();
    const double lift = pose.lift;
    QPainterPath wire;
    wire.moveTo(x, 52 + lift);
    wire.lineTo(x, string + 4 + lift);
    out.push_back({wire, PartLook::line, PartName::none, true});
    out.push_back(
        {shapes::polygon({{x - 22, 40 + lift}, {x + 20, 46 + lift}, {x + 20, 52 + lift}, {x - 22, 46 + lift}}),
         PartLook::typical, PartName::none, true});
    out.push_back(
        {shapes::box(x - 13, string + 1.6 + lift, x + 13, string + 5.6 + lift), PartLook::felt, PartName::none, true});
    out.push_back({shapes::box(x - 10, string + 5.6 + lift, x + 10, string + 15 + lift), PartLook::typical,
                   PartName::damper, true});
}

} // namespace

std::vector<DrawnPart> grandParts(const Linkage& linkage, const Pose& pose, bool checked) {
    std::vector<DrawnPart> out;
    const kinematics::Build& build = linkage.build();
    const double string = linkage.stringAt();
    const double rear = build.capstan.x + 95;
    shapes::addKeyBed(out, linkage, rear);
    out.push_back({shapes::box(build.jack.x - 90, string, rear + 90, string + 1.6), PartLook::metal, PartName::string});
    shapes::addKey(out, linkage, pose, rear);
    addGrandDamper(out, linkage, pose);
    addGrandWippen(out, linkage, pose);
    addGrandJack(out, linkage, pose);
    addGrandHammer(out, linkage, pose);
    addGrandCheck(out, linkage, pose, checked);
    const Pose escape = linkage.at(std::min(linkage.distances().escapeAt, linkage.distances().dip));
    const double button = linkage.button(), toe = escape.jackToe.x;
    out.push_back({shapes::box(toe - 5, button, toe + 5, button + 3), PartLook::felt});
    out.push_back({shapes::box(toe - 5, button + 3, toe + 5, button + 7), PartLook::wood, PartName::letOffButton});
    QPainterPath screw;
    screw.moveTo(toe, button + 7);
    screw.lineTo(toe, button + 22);
    out.push_back({screw, PartLook::line});
    out.push_back({shapes::box(toe - 10, button + 22, toe + 10, button + 34), PartLook::typical});
    return out;
}

} // namespace hammerline
