// The relation that ties key and hammer of one note together (computation 6).
//     D = M + (B - O)/R + A
// D key dip, M lost motion, A aftertouch at the key front; B blow, O let-off at the hammer, to the string; all mm.
// R = hammer travel : key-front travel. Step: the key falls D; M of it moves nothing, A of it comes after the escape,
// what is left drives the hammer from B to O. With M < 0 the hammer is held off its rest and the measured B is already
// short by R|M|, so M does not count a second time: the relation holds with max(M, 0).
// Source: a list post of 2010 (2010-Jan/018138) has (B - O)/(D - A) = R; the term M is derived here.
#pragma once

#include "core/judge/pass_table.h"

#include <array>

namespace hammerline {

double aftertouchOf(double dip, double lostMotion, double blow, double letOff, double ratio);
double dipOf(double lostMotion, double blow, double letOff, double aftertouch, double ratio);
double blowOf(double dip, double lostMotion, double letOff, double aftertouch, double ratio);
/// None where the key travel that drives the hammer, D - M - A, is not positive.
std::optional<double> ratioOf(double dip, double lostMotion, double blow, double letOff, double aftertouch);

/// The blow of the rest rail from the measured blow, and back: B_rail = B + R |M| where M < 0; B = B_rail + R min(M,
/// 0).
double railBlowOf(double blow, double lostMotion, double ratio);
double shownBlowOf(double railBlow, double lostMotion, double ratio);

/// What a note's cells say of the relation, in mm. `letOffBound`: the note blocks, so O <= 0; `aftertouchBound`: it has
/// no let-off, so A < 0; the field then holds the bound 0.
struct EscapementReading {
    std::optional<double> dip, lostMotion, blow, letOff, aftertouch;
    bool letOffBound = false;
    bool aftertouchBound = false;
    bool complete() const { return dip && lostMotion && blow && letOff && aftertouch; }
};
/// A grand has no lost motion at the key: it counts as 0. `off rail` without a number counts as 0 likewise (see above).
EscapementReading escapementAt(const Piano&, const PassTable&, NoteNumber);

/// The dimensions of the relation and the change of the residual r = D - M - (B - O)/R - A per mm of each.
inline constexpr std::array kRelationDimensions = {dimension::keyDip, dimension::lostMotion, dimension::blow,
                                                   dimension::letOff, dimension::aftertouch};
std::array<double, 5> relationWeights(double ratio); // (+1, -1, -1/R, +1/R, -1)

/// r, mm. None unless the reading is complete.
std::optional<double> relationResidual(const EscapementReading&, double ratio);

} // namespace hammerline
