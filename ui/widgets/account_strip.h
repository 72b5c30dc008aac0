// The accounts of all notes of a section as one strip: at each note what every line gives or takes against its aim, one
// on the other from the line of the aims, and what that leaves.
#pragma once

#include "core/sheet/note_action.h"
#include "ui/widgets/drawn_style.h"

#include <span>

namespace hammerline {

double accountStripHeight(const DrawnStyle&);
/// `current`: marked, where it is one of them. Notes without an account are left empty.
void paintAccountStrip(QPainter&, const QRectF&, std::span<const NoteAction>, NoteNumber current, const Piano&,
                       const DrawnStyle&);

} // namespace hammerline
