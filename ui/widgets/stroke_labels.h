// Where the labels of a stroke find room on its bar.
#pragma once

#include "ui/widgets/stroke_painter.h"

namespace hammerline {

/// Beside their places on the bar, none over another; one that finds no room is left out (the sentence has it).
void paintStrokeLabels(QPainter&, const DrawnStyle&, const KeyWay&, const QRectF& bar, const NoteAction&, const Piano&);

} // namespace hammerline
