// A line stretched over the keyboard, against which heights are read, hangs between its ends (situation 11).
#pragma once

#include "core/piano/piano.h"

namespace hammerline {

struct StretchedLine {
    double density{};  // kg/m3: steel 7850, brass 8500, nylon 1140
    double diameter{}; // mm
    double pull{};     // N
    double span{};     // mm, over its two supports
};

/// Sag at the middle, mm: w L^2/(8 T), w the weight of a metre (density pi d^2/4 g, g = 9.80665 m/s2), L the span, T
/// the pull. Key step: the moment of the load about the middle, w L/2 x L/4, is held by T at the arm s (a parabola,
/// since s is small beside L). 0 without a pull.
double sagOf(const StretchedLine&);

/// How far the line hangs at a place along it (0 one end, 1 the other): 4 s x (1 - x).
double sagAt(double sag, double along);

/// Place of a note between the lowest and the highest natural, by naturals: 0 to 1. A sharp stands between its two.
double placeAmongNaturals(NoteNumber, const Piano&);

/// A sag as a person says it, in mm at the middle of the span: a length (0.28, .011in), or material, thickness and pull
/// (steel 0.5 mm 10 N; a pull in kg is the mass that hangs on the line), with the span where it is not the keyboard's
/// own (52 naturals: 1225 mm). An empty text is a straight line: 0. Refuses badLineSag, also above 3 mm.
Outcome<double> readLineSag(std::string_view typed, const Piano&);

inline constexpr double kGreatestSag = 3; // mm; a line that hangs more is no reference

} // namespace hammerline
