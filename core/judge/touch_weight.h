// Static touch weight (computation 12): grams at the key front, dampers lifted.
#pragma once

#include "core/piano/piano.h"

namespace hammerline {

struct TouchWeight {
    double mean{};     // (W_d + W_u)/2: what leverage, hammers and leads weigh
    double friction{}; // (W_d - W_u)/2
};

/// From the down weight W_d (least that takes the key down) and the up weight W_u (most that the rising key lifts), g.
/// Friction works against either motion: W_d = mean + friction, W_u = mean - friction. Refuses upNotBelowDown.
Outcome<TouchWeight> touchWeight(double down, double up);

/// Change of the mean weight, g, by a lead of `grams` at `distance` mm in front of the balance pin (negative: behind):
/// -grams distance/F.
double leadEffect(double grams, double distance, const KeyArms&);

/// What differs between two states of a note: friction (damp, dust, tight centres) and weight (leads, hammers, springs)
/// apart. u is the standard uncertainty of one weighing: a mean or a friction of two has u/sqrt(2), a difference of two
/// such has u; beyond 2 u it is taken as real.
struct TouchChange {
    double mean{}, friction{};
    bool weightChanged = false, frictionChanged = false;
};
TouchChange touchChange(const TouchWeight& before, const TouchWeight& now, double u);

} // namespace hammerline
