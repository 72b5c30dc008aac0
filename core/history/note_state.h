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
    bool onRail = false;   // lost motion: since it was last moved the eye saw the hammer on its rail
};

/// How the escapement of a note hangs together: A = D - M - (B - O)(1/R + e), e being what this note's 1/R differs by
/// from that of its colour.
struct EscapementLink {
    double ratio = 0;     // R, hammer : key front; 0: not known, the aftertouch stands alone
    double spread = 0;    // of R between notes, one standard deviation
    bool vertical = true; // a grand's keys have no lost motion
    DimensionId height{}; // key-height of naturals, sharp-height of sharps
};

/// Covariance of what hangs together, in this order: height, dip, lost motion, blow of the rail, let-off, e. Rows of
/// what is not known are zero.
inline constexpr std::size_t kLinkedCount = 6;
using LinkedRow = std::array<double, kLinkedCount>;
using LinkedCovariance = std::array<LinkedRow, kLinkedCount>;

/// One state with one covariance. Blow is kept as the blow of the *rail*, B + R |M| where the hammer is held off it
/// (M < 0): the state is linear across M = 0 (computation 6). While dip, lost motion, blow and let-off are known the
/// aftertouch is not kept beside them but reckoned from them; a reading of it tells of them and of e.
struct NoteState {
    std::array<Known, kDimensionCount> dimension;
    EscapementLink linkage;
    LinkedCovariance together{};
    double e = 0;                // per mm of hammer travel
    bool aftertouchRead = false; // by a person, ever
    const Known& of(DimensionId d) const { return dimension.at(d.row); }
    Known& of(DimensionId d) { return dimension.at(d.row); }

    /// The blow as it is seen: B_rail + R min(M, 0).
    double shownBlow(double ratio) const;
    void takeShownBlow(double shown, double ratio);
};

/// Says how the note hangs together; nothing may be known of it yet.
void link(NoteState&, const EscapementLink&);

/// What a reading tells: a value with its standard uncertainty (mean of the trials; a go / no-go pair as an even
/// spread; a word as the bound it is). None where it bounds one side only, or says only that all is well.
struct Told {
    double value{};
    double variance{};
    int readings = 1;
};
std::optional<Told> tell(DimensionId, const Measured&, double u);

/// Weighs a reading y of variance u^2 with what was known: with h the row of what is read (one entry, or that of the
/// aftertouch), S = h V h' + u^2, k = V h'/S, x += k (y - h x), V -= k h V (Kalman 1960; the relation enters here
/// alone, so nothing shrinks by being used again). Beyond four standard deviations of both the reading stands alone; an
/// aftertouch so far off is this note's own (e takes it). With four of the five known the relation gives the fifth.
void readAt(NoteState&, DimensionId, const Told&);
/// The eye saw the hammer on its rail: lost motion is not below -0.03 (a gap of R 0.03 = 0.15 mm at the shank is felt
/// by a tug; a guess, no source). The normal of M is cut there, moments matched, and what hangs with it follows.
void seeOnRail(NoteState&);
/// What is expected before any reading: from the neighbours.
void begin(NoteState&, DimensionId, double value, double variance);
/// What was known of it is no expectation any more.
void forget(NoteState&, DimensionId);
/// Something beside moved it by so much.
void shift(NoteState&, DimensionId, double by, double variance);

/// Standard deviation of the hand that does it, in the operation's unit (computation 13: screws 5 % + 0.02 turn,
/// punchings 3 % + 0.005 mm, wires 12 % + 0.25 mm of the reading they serve).
double handSd(OperationId, double amount, AmountUnit);

/// Moves every known dimension by the effects of an amount. One error of the screw is one error in all that it moves:
/// V += r r' ((sd of response/response)^2 amount^2 + hand^2). R is not one number through the stroke: the variance of e
/// grows by (0.08 (|change of B| + |change of O|)/(43 R))^2 (simulated: without it .88 to .91 of the aftertouches lie
/// inside 95 % after work).
void move(NoteState&, const Response&, double amount, AmountUnit);

/// Set by looking until it reads the aim: then known as well as the gauge knows (u). The amount, and with it what the
/// others did, follows from the change; without an aim on record, all it moved is unknown.
void setToAim(NoteState&, const Response&, std::optional<double> aim, double u);

} // namespace hammerline
