// The parts of an upright's action, seen from the bass end.
#include "ui/widgets/linkage_shapes.h"

#include <algorithm>

namespace hammerline {

namespace {

using kinematics::Linkage;
using kinematics::Point;
using kinematics::Pose;

constexpr double kCatcherX = -42, kCatcherY = 10; // from the hammer's centre, hammer at the string
constexpr double kRailUp = 74;                    // up the shank

/// How far the hammer is turned from where it stands at the string.
double fromString(const Linkage& linkage, const Pose& pose) {
    return kinematics::angleOf(pose.crown - pose.hammerCentre) - kinematics::angleOf(linkage.build().crown);
}

void addHammer(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose) {
    const QTransform atString = shapes::placed(pose.hammerCentre, fromString(linkage, pose));
    const double up = linkage.build().crown.y, reach = linkage.build().crown.x;
    const double lever = linkage.lever(), leather = linkage.build().leather.y;
    out.push_back({atString.map(shapes::box(-2.6, 10, 2.6, up + 9)), PartLook::wood, PartName::none, true});
    QPainterPath stem;
    stem.moveTo(-6, 6);
    stem.lineTo(kCatcherX + 4, kCatcherY);
    out.push_back({atString.map(stem), PartLook::line, PartName::none, true});
    out.push_back({atString.map(shapes::polygon({{kCatcherX - 5, kCatcherY - 12},
                                                 {kCatcherX + 5, kCatcherY - 10},
                                                 {kCatcherX + 5, kCatcherY + 12},
                                                 {kCatcherX - 4, kCatcherY + 10}})),
                   PartLook::wood, PartName::none, true});
    const QTransform butt = shapes::placed(pose.hammerCentre, -pose.hammer);
    out.push_back({butt.map(shapes::polygon({{-lever - 6, leather},
                                             {-lever, leather},
                                             {-lever, leather - 6},
                                             {-lever + 6, leather - 7},
                                             {8, -7},
                                             {10, 4},
                                             {5, 14},
                                             {-6, 16},
                                             {-lever - 3, 8},
                                             {-lever - 7, 0}})),
                   PartLook::wood, PartName::none, true});
    out.push_back({shapes::disc(pose.hammerCentre.x, pose.hammerCentre.y, 2.2), PartLook::wood});
    // the wood of the head, from behind the shank to the point under the felt
    out.push_back({atString.map(shapes::polygon({{reach - 80, up + 9},
                                                 {reach - 45, up + 9},
                                                 {reach - 16, up},
                                                 {reach - 45, up - 9},
                                                 {reach - 80, up - 7}})),
                   PartLook::wood, PartName::hammer, true});
    out.push_back({hammerFelt(linkage, pose), PartLook::felt, PartName::none, true});
}

void addWippen(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose) {
    const kinematics::Build& build = linkage.build();
    const Point jack = build.jack - build.wippen, heel = build.capstan - build.wippen;
    const QTransform wippen = shapes::placed(build.wippen, -pose.wippen);
    out.push_back(
        {wippen.map(shapes::polygon(
             {{heel.x - 8, heel.y}, {heel.x + 8, heel.y}, {heel.x + 8, heel.y + 4}, {heel.x - 8, heel.y + 4}})),
         PartLook::felt, PartName::none, true});
    out.push_back({wippen.map(shapes::polygon({{7, 6},
                                               {8, -6},
                                               {heel.x + 22, heel.y + 9},
                                               {heel.x + 8, heel.y + 4},
                                               {heel.x - 8, heel.y + 4},
                                               {heel.x - 12, heel.y + 11},
                                               {jack.x - 24, jack.y - 2},
                                               {jack.x - 24, jack.y + 4},
                                               {jack.x - 6, jack.y + 4},
                                               {jack.x + 7, jack.y + 4},
                                               {jack.x + 16, jack.y + 1}})),
                   PartLook::wood, PartName::wippen, true});
    out.push_back({shapes::disc(build.wippen.x, build.wippen.y, 2.2), PartLook::wood});
}

void addJack(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose) {
    // in the jack's own frame, its stem upright
    const kinematics::Build& build = linkage.build();
    const Point top = build.jackTop - build.jack;
    const double x = top.x, y = kinematics::lengthOf(pose.jackTop - pose.jackCentre);
    const double high = std::sqrt(std::max(1.0, y * y - x * x));
    const QTransform jack = shapes::placed(pose.jackCentre, pose.jack);
    const Point toe = build.jackToe;
    out.push_back({jack.map(shapes::polygon({{toe.x - 3, toe.y - 4},
                                             {toe.x - 3, toe.y},
                                             {toe.x + 3, toe.y},
                                             {-6, 7},
                                             {x - 8, high},
                                             {x, high},
                                             {6, 4},
                                             {4, -5},
                                             {-5, -4}})),
                   PartLook::wood, PartName::jack, true});
    out.push_back({shapes::disc(pose.jackCentre.x, pose.jackCentre.y, 1.8), PartLook::wood});
}

/// It stands where it meets the catcher when the hammer is caught.
void addBackCheck(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose, bool checked) {
    const Pose caught = linkage.checked();
    const QTransform hammer = shapes::placed(caught.hammerCentre, fromString(linkage, caught));
    const QTransform back = shapes::placed(linkage.build().wippen, -caught.wippen).inverted();
    const QPointF meets = back.map(hammer.map(QPointF(kCatcherX - 5, kCatcherY)));
    const QTransform wippen = shapes::placed(linkage.build().wippen, -pose.wippen);
    const Point jack = linkage.build().jack - linkage.build().wippen;
    QPainterPath wire;
    wire.moveTo(jack.x - 20, jack.y + 4);
    wire.lineTo(meets.x() - 6, meets.y() - 10);
    out.push_back({wippen.map(wire), PartLook::line, PartName::none, true});
    const auto at = [&](double left, double bottom, double right, double top) {
        return wippen.map(shapes::box(meets.x() + left, meets.y() + bottom, meets.x() + right, meets.y() + top));
    };
    out.push_back({at(-10, -12, -3, 13), checked ? PartLook::wood : PartLook::typical, PartName::backCheck, true});
    out.push_back({at(-3, -12, 0, 13), PartLook::felt, PartName::none, true});
}

void addDamper(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose) {
    const double string = linkage.stringAt();
    const Point centre = linkage.build().damperLever;
    const QTransform lever = shapes::placed(centre, pose.damper);
    const double felt = string - centre.x; // of its face, from the lever's centre
    QPainterPath wire;
    wire.moveTo(-1, 22);
    wire.lineTo(felt - 11, 66);
    out.push_back({lever.map(wire), PartLook::line, PartName::none, true});
    out.push_back({lever.map(shapes::polygon({{-3, -30}, {2, -30}, {3, 0}, {1, 24}, {-3, 24}, {-4, 0}})),
                   PartLook::typical, PartName::none, true});
    out.push_back({lever.map(shapes::box(felt - 13, 64, felt - 5, 100)), PartLook::typical, PartName::damper, true});
    out.push_back({lever.map(shapes::box(felt - 5, 64, felt, 100)), PartLook::felt, PartName::none, true});
    const QTransform wippen = shapes::placed(linkage.build().wippen, -pose.wippen);
    QPainterPath spoon;
    spoon.moveTo(5, 4);
    spoon.quadTo(QPointF(8, 18), QPointF(linkage.build().damperLever.x - linkage.build().wippen.x - 5.5, 35));
    out.push_back({wippen.map(spoon), PartLook::line, PartName::none, true});
}

/// Above the hammers: the wire stands on the wippen's end, its button below the lever's arm until the damper stirs.
void addOverdamper(std::vector<DrawnPart>& out, const Linkage& linkage, const Pose& pose) {
    const kinematics::Build& build = linkage.build();
    const Point centre = build.damperLever, foot = linkage.wireFoot(pose.wippen);
    const double felt = linkage.stringAt() - centre.x, arm = linkage.wireFoot(0).x - centre.x;
    const double lifts = linkage.wireFoot(linkage.damperFrom() ? linkage.at(*linkage.damperFrom()).wippen : 0).y;
    const double button = centre.y - 4 + foot.y - lifts; // under the arm once the damper stirs
    const QTransform lever = shapes::placed(centre, -pose.damper);
    QPainterPath wire;
    wire.moveTo(foot.x, foot.y);
    wire.lineTo(foot.x, button);
    out.push_back({wire, PartLook::line, PartName::none, true});
    out.push_back({shapes::box(foot.x - 4, button - 5, foot.x + 4, button), PartLook::felt, PartName::none, true});
    out.push_back({lever.map(shapes::polygon({{arm - 7, -3},
                                              {arm - 7, 3},
                                              {-4, 6},
                                              {felt - 9, 2},
                                              {felt - 9, -12},
                                              {felt - 14, -12},
                                              {felt - 14, -5},
                                              {4, -5}})),
                   PartLook::typical, PartName::none, true});
    out.push_back({lever.map(shapes::box(felt - 14, -44, felt - 6, -10)), PartLook::typical, PartName::damper, true});
    out.push_back({lever.map(shapes::box(felt - 6, -44, felt, -10)), PartLook::felt, PartName::none, true});
    out.push_back({shapes::box(centre.x - 8, centre.y + 7, centre.x + 8, centre.y + 20), PartLook::typical});
    out.push_back({shapes::disc(centre.x, centre.y, 2.2), PartLook::wood});
    const QTransform wippen = shapes::placed(build.wippen, -pose.wippen);
    const Point jack = build.jack - build.wippen;
    out.push_back({wippen.map(shapes::box(build.damperWire.x - 5, jack.y - 1, jack.x - 22, jack.y + 4)), PartLook::wood,
                   PartName::none, true});
}

} // namespace

std::vector<DrawnPart> uprightParts(const Linkage& linkage, const Pose& pose, bool checked) {
    std::vector<DrawnPart> out;
    const kinematics::Build& build = linkage.build();
    const double string = linkage.stringAt(), back = build.capstan.x + 15;
    const double top = build.over ? 354 : 300;
    shapes::addKeyBed(out, linkage, back);
    out.push_back({shapes::box(string, 95, string + 1.6, top), PartLook::metal, PartName::string});
    // The rest rail lies against the shank when the hammer is at rest.
    const Pose rest = linkage.at(0);
    const QTransform atRest = shapes::placed(rest.hammerCentre, fromString(linkage, rest));
    out.push_back({atRest.map(shapes::box(-6.6, kRailUp - 8, -2.6, kRailUp + 8)), PartLook::felt});
    out.push_back({atRest.map(shapes::box(-18, kRailUp - 9, -6.6, kRailUp + 9)), PartLook::wood, PartName::restRail});
    shapes::addKey(out, linkage, pose, back);
    if (build.over)
        addOverdamper(out, linkage, pose);
    else
        addDamper(out, linkage, pose);
    addWippen(out, linkage, pose);
    addJack(out, linkage, pose);
    addHammer(out, linkage, pose);
    addBackCheck(out, linkage, pose, checked);
    const Pose escape = linkage.at(std::min(linkage.distances().escapeAt, linkage.distances().dip));
    const double button = linkage.button(), toe = escape.jackToe.x;
    out.push_back({shapes::box(toe - 5, button, toe + 5, button + 3), PartLook::felt});
    out.push_back({shapes::box(toe - 5, button + 3, toe + 5, button + 8), PartLook::wood, PartName::letOffButton});
    QPainterPath screw;
    screw.moveTo(toe, button + 8);
    screw.lineTo(toe, button + 16);
    out.push_back({screw, PartLook::line});
    out.push_back({shapes::box(toe - 9, button + 16, toe + 9, button + 30), PartLook::typical});
    return out;
}

} // namespace hammerline
