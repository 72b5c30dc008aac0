// What the neighbours of a first reading say of it (empirical Bayes: James and Stein 1961, Efron and Morris 1975).
#pragma once

#include "core/history/note_state.h"

#include <span>

namespace hammerline {

/// A first reading in the row of its like: one dimension, one section, one colour where those differ. Trade units.
struct FirstReading {
    NoteNumber note;
    double value{};
};

/// What is expected at a note before its own reading counts. None: too few readings, or this one may be the odd one.
struct Beforehand {
    double value{}, variance{};
};

/// m = median of the six nearest readings on each side, without the note; e = y - m; T = (1 + 1/sqrt(n)) times the
/// larger of (1.4826 MAD(e))^2 and the mean square of those e that are not odd (within 2.5 of the scale, at least u)
/// over 0.9113, the whole over 1 + 1.57/12; between the notes sigma^2 = max(T - u^2, u^2/2). The note is then expected
/// at m with variance sigma^2 + 1.57 (sigma^2 + u^2)/12 (1.57 = pi/2: a median against a mean). Not where |e| exceeds
/// 2.5 standard deviations of e, and not from fewer than seven readings. Measured on 60 worn uprights and 60 grands:
/// the truth lies inside 95 % in .934 to .966 by dimension and gauge (by the median of e alone, with sigma^2 at least
/// u^2/4: .87 to .95), and the states are nearer to it.
std::vector<std::optional<Beforehand>> besideEach(std::span<const FirstReading> row, double u);

} // namespace hammerline
