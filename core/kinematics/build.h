// The typical build of an action between its parts' centres: what no reading tells, for drawing only. A drawing says
// that these links are typical; the distances that were read are drawn as read.
#pragma once

#include "core/kinematics/plane.h"
#include "core/piano/piano.h"

namespace hammerline::kinematics {

/// mm; origin at the balance pin, at the key's lower edge; the key at rest is level. Source: common practice, no
/// source: proportions of a customary vertical and a customary grand, for the arms that stand beside them; the whole
/// action is moved along the key so that its heel stands over this piano's capstan.
struct Build {
    bool grand = false;
    double front = 0;    // balance pin to the key's front edge, F
    Point capstan;       // its head, key at rest
    Point wippen;        // centre; the underside of the heel lies level at the capstan's head
    Point jack;          // centre, wippen at rest
    Point jackToe;       // from the jack's centre
    Point jackTop;       // where it meets the butt or the knuckle, at the first touch
    double hammerY = 0;  // height of the hammer's centre; its place along x is the free link
    Point crown;         // from the hammer's centre, at the string
    Point leather;       // upright: the butt's leather under the hammer's centre (y); grand: the knuckle's centre (y)
    double knuckle = 0;  // grand: radius
    double escape = 0;   // how far the top slides before it is free
    double freeLink = 0; // customary lever of the butt: hammer's centre to the jack's line
    Point damperLever;   // centre, none on a grand
    double spoon = 0;    // height of the spoon's tip over the wippen's centre, none on a grand
    bool over = false;   // an overdamper: the lever stands above the hammers, a wire from the wippen lifts its arm
    Point damperWire{};  // its foot, from the wippen's centre
    double afterEscape = 0; // customary gap of a hammer that falls back, mm, upright
};

/// The build that fits the piano's kind and its arms for naturals.
Build typicalBuild(const Piano&, const KeyArms&);

} // namespace hammerline::kinematics
