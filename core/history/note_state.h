// What is known of the dimensions of one note, and how readings, the escapement relation and work change it
// (computation 6, 8). Trade units (mm, g).
#pragma once

#include "core/operation/operation.h"
#include "core/pass/pass.h"

namespace hammerline {

struct Known {
    double value{};
    double variance{};
    bool known = false;
    bool expected = false; // no fresh reading since the last operation that moved it
    bool weighed = false;  // a reading was weighed with an expectation, not taken alone
    bool derived = false;  // never read: the relation gave it
    int readings = 0;      // by a person since it was last disturbed
    double own = 0;        // their mean, as read (a word as its bound)
    double latest = 0;     // the newest of them
};

/// Blow is kept as the blow of the *rail*, B + R |M| where the hammer is held off it (M < 0): the state is linear
/// across M = 0 (computation 6).
struct NoteState {
    std::array<Known, kDimensionCount> dimension;
    const Known& of(DimensionId d) const { return dimension.at(d.row); }
    Known& of(DimensionId d) { return dimension.at(d.row); }

    /// The blow as it is seen: B_rail + R min(M, 0).
    double shownBlow(double ratio) const;
    void takeShownBlow(double shown, double ratio);
};

/// What a reading tells: a value with its standard uncertainty (mean of the trials; a go / no-go pair as an even
/// spread; a word as the bound it is). None where it bounds one side only, or says only that all is well.
struct Told {
    double value{};
    double variance{};
    int readings = 1;
};
std::optional<Told> tell(DimensionId, const Measured&, double u);

/// Weighs a reading with what was known: k = V/(V+u^2), x += k (y - x), V -> (1-k) V. Beyond four standard deviations
/// of both the reading stands alone.
void weigh(Known&, const Told&);

/// D = M + (B-O)/R + A as one more reading with the uncertainty that the spread of R between notes gives it; left out
/// beyond four of its own standard deviations. With four of the five known it gives the fifth.
void useRelation(NoteState&, double ratio, double ratioSpread, bool vertical);

/// Standard deviation of the hand that does it, in the operation's unit (computation 13: screws 5 % + 0.02 turn,
/// punchings 3 % + 0.005 mm, wires 12 % + 0.25 mm of the reading they serve).
double handSd(OperationId, double amount, AmountUnit);

/// Moves every known dimension by the effects of an amount; variances grow by (amount sd)^2 and the hand's.
void move(NoteState&, const Response&, double amount, AmountUnit);

/// Set by looking until it reads the aim: then known as well as the gauge knows (u). The amount, and with it what the
/// others did, follows from the change; without an aim on record, all it moved is unknown.
void setToAim(NoteState&, const Response&, std::optional<double> aim, double u);

} // namespace hammerline
