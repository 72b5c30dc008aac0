// The gap at the string ten times as large as the drawing: the head at its own let-off, before and after, over the
// zone.
#pragma once

#include "ui/widgets/linkage_painter.h"

namespace hammerline {

/// In the upper left of `box`; `scale`: of the drawing, dots a mm.
void paintLens(QPainter&, const QRectF& box, const LinkageScene&, const DrawnStyle&, double scale);

} // namespace hammerline
