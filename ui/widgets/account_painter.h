// The account of the dip as five bars on one axis, mm at the key's front: what gives is ink, what takes is hatched,
// after the plan is a broken outline below, and the last row holds what is left over the zone. For screen and paper.
#pragma once

#include "core/sheet/note_action.h"
#include "ui/widgets/drawn_style.h"

namespace hammerline {

/// Height that the painter needs.
double accountHeight(const DrawnStyle&, const NoteAction&);
void paintAccount(QPainter&, const QRectF&, const NoteAction&, const DrawnStyle&);

} // namespace hammerline
