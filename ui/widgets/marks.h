// The painted signs: triangles of a deviation, step of unevenness, notch of mend-first, key swatch, focus ring, hatch.
// Painted, because their glyphs differ from face to face. Colours are given by the caller from the look.
#pragma once

#include "ui/widgets/look.h"

#include <QPainter>

namespace hammerline {

/// 1 to 3 triangles from `left`, centred on `middle`; gives the x after the last. `size` is the width of one.
double paintTriangles(QPainter&, double left, double middle, int count, bool up, const QColor&, double size);
double triangleWidth(int count, double size);
/// A square bump: this note stands off the run of its neighbours.
double paintStep(QPainter&, double left, double middle, const QColor&, double size);
/// A square with a slot: mend this first.
void paintNotch(QPainter&, const QRectF&, const QColor& ink, const QColor& slot);
/// The little key beside a note's name.
void paintSwatch(QPainter&, const QRectF&, bool sharp, const Look&);
/// 3 px ring in a 2 px halo; `inside`: within the rectangle (rows of lists), else around it.
void paintRing(QPainter&, const QRectF&, const Look&, bool inside = false);
/// 45 degree lines: not fitted.
void paintHatch(QPainter&, const QRectF&, const QColor&);
/// A warning triangle with its stroke, for refusals.
void paintWarning(QPainter&, const QRectF&, const QColor& fault, const QColor& paper);

/// Text with sharps painted where it holds U+266F (faces draw it too small or not at all); gives its width.
double paintNote(QPainter&, QPointF baseline, const QString& text);
double noteWidth(const QString& text, const QFont&);

/// Mended.
void paintTick(QPainter&, const QRectF& box, const QColor& ink);

} // namespace hammerline
