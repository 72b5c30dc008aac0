// Pieces that several drawings use, as lists of shapes, and ways to place them.
#pragma once

#include "ui/widgets/doing/scene.h"

#include <QTransform>

namespace hammerline::doing {

using Shapes = std::vector<Shape>;

Points box(double left, double bottom, double right, double top);
/// Flattened: a ring or disc seen from above at a slant.
Points oval(QPointF centre, double across, double high);
Shape part(Fill, Points, double round = 0.8);
Shape curve(Fill, Points);
Shape wire(Points, double thick, bool smooth = false);
Shape thinLine(Points, bool smooth = false);
Shape dashed(Points, bool closed = true);

/// Turned counter-clockwise by degrees about the origin, made larger, then moved.
QTransform put(QPointF at, double degrees = 0, double scale = 1, bool mirrored = false);
Shapes moved(Shapes, const QTransform&);
/// All lists one after the other, back to front.
Shapes together(std::initializer_list<Shapes>);

// Hands; their wrist leads to the left. Placed by `put`.
/// A fist around a bar that lies along x; the bar comes out at the right. The middle of the grip at 0.
Shapes fist();
/// Thumb and first finger that hold what lies at 0, the hand above it.
Shapes pinch();

// The upright at rest, seen from the bass end. mm; the key's upper edge at y 22, the string at x 421.
Shapes uprightKeyEnd();
Shapes uprightCapstan(double up);
Shapes uprightWippen();
Shapes uprightJack(double tilt);
Shapes uprightButt(double turn);
Shapes uprightHead(double turn);
Shapes uprightRails();
Shapes uprightLetOff();
Shapes uprightCheck(double lean);
Shapes uprightSpoon();
Shapes uprightDamper(double off);
Shapes uprightString();
constexpr double kUprightRest = 18; // degrees that the hammer stands back from the string
/// Of the hammer's frame: its centre at 0, its shank upward when it is at the string.
QTransform uprightHammer(double turn);

} // namespace hammerline::doing
