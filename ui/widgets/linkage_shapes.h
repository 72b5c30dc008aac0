// The parts of one note's action as outlines in mm, x toward the strings, y up, where a linkage has put them. What was
// read stands as it was read; what no reading tells is marked typical and drawn hatched.
#pragma once

#include "core/kinematics/linkage.h"
#include "ui/words/linkage_names.h"

#include <QPainterPath>
#include <QTransform>

#include <vector>

namespace hammerline {

enum class PartLook : std::uint8_t { wood, felt, metal, typical, line };
struct DrawnPart {
    QPainterPath outline; // mm
    PartLook look = PartLook::wood;
    PartName name = PartName::none;
    bool moves = false; // with the key
};

/// Back to front; what comes before the first part that moves stands still behind everything. `checked`: where the back
/// check stands is told by the checking distance; else it is typical.
std::vector<DrawnPart> uprightParts(const kinematics::Linkage&, const kinematics::Pose&, bool checked);
std::vector<DrawnPart> grandParts(const kinematics::Linkage&, const kinematics::Pose&, bool checked);
std::vector<DrawnPart> partsOf(const kinematics::Linkage&, const kinematics::Pose&, bool checked);

/// The hammer's head in mm, its crown as given: for the lens.
QPainterPath hammerFelt(const kinematics::Linkage&, const kinematics::Pose&);

// Shared by the two kinds.
namespace shapes {

/// Turned counter-clockwise about `centre` after being moved there: a part's own frame has its centre at 0.
QTransform placed(kinematics::Point centre, double angle);
QPainterPath polygon(std::initializer_list<QPointF>);
QPainterPath box(double left, double bottom, double right, double top);
QPainterPath disc(double x, double y, double radius);
/// Bed, rails and their felts, which stand behind all that moves. `back` the back rail's place.
void addKeyBed(std::vector<DrawnPart>&, const kinematics::Linkage&, double back);
/// Key, its top and pins; the capstan.
void addKey(std::vector<DrawnPart>&, const kinematics::Linkage&, const kinematics::Pose&, double back);

} // namespace shapes

} // namespace hammerline
