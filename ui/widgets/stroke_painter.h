// The stroke of one note on the axis of its key, large: lost motion, where the damper stirs, let-off, bottom and what
// is left, as read and after the plan, over the zones. For screen and paper.
#pragma once

#include "core/sheet/note_action.h"
#include "ui/widgets/drawn_style.h"

namespace hammerline {

/// Where mm of the key's way lie on a line from `left` to `right`.
struct KeyWay {
    double left = 0, right = 1;
    double most = 11; // mm at the right end

    double x(double mm) const { return left + (right - left) * mm / most; }
    /// 0 to 11 mm, farther where something of the note lies beyond.
    static KeyWay over(double left, double right, const NoteAction&);
};

/// Height that the painter needs.
double strokeHeight(const DrawnStyle&, bool withPlan);
/// Names of the two bars stand in the first 25.5 units of the rectangle.
void paintStroke(QPainter&, const QRectF&, const NoteAction&, const Piano&, const DrawnStyle&);

} // namespace hammerline
