// How a drawing is set: colours, faces, and the unit that its measures are counted in (a quarter of a text row). Screen
// and paper call the same painters and differ in nothing but this.
#pragma once

#include "ui/widgets/look.h"

#include <QPainter>

namespace hammerline {

struct DrawnStyle {
    Look look;
    QFont plain;  // labels
    QFont bold;   // figures
    QFont strong; // what the drawing is about
    double unit = 4;

    double u(double n) const { return n * unit; }
};

DrawnStyle screenStyle(const QWidget&);

/// The zone's colour for what a drawing shades, the ramp for what is out: light enough for ink to stand on.
QColor zoneColour(const DrawnStyle&);

/// A line of text whose left edge, right edge or middle is at `x`, its base line at `y`.
void drawnText(QPainter&, const DrawnStyle&, const QFont&, QPointF, const QString&, Qt::Alignment = Qt::AlignLeft);
double drawnWidth(const QFont&, const QString&);

/// 45 degree lines at the drawing's own distance, inside any outline.
void drawnHatch(QPainter&, const DrawnStyle&, const QPainterPath&, const QColor&);

/// An outline in broken lines.
void drawnBroken(QPainter&, const DrawnStyle&, const QPainterPath&, double width = 0.35);

QPen inkPen(const DrawnStyle&, double width = 0.35);
QPen dashedPen(const DrawnStyle&, double width = 0.35);

} // namespace hammerline
