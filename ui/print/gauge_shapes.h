// What gauges are drawn with; mm, sizes to the outer edge of the line.
#pragma once

#include "ui/print/canvas.h"

namespace hammerline::print {

inline constexpr double kGaugeLine = 0.25; // mm

/// Ticks of each millimetre hanging from a line, every tenth longer and, from `firstFigure` on, with its figure.
void paintTicks(Canvas&, double x, double y, int length, int firstFigure);
/// A line of whole millimetres with ticks; its ends' outer edges are `length` apart.
void paintRule(Canvas&, double x, double y, int length, int firstFigure);
/// The same down the page, without ticks.
void paintUprightLine(Canvas&, double x, double y, double length);
/// An arm of `wide` with a leg of half that; the leg is longer by `step`.
void paintStepGauge(Canvas&, double x, double y, double wide, double arm, double step);
/// A notch in the lower edge at x.
void paintNick(Canvas&, double x, double top, double height);

} // namespace hammerline::print
