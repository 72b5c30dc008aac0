#include "core/kinematics/build.h"

namespace hammerline::kinematics {

namespace {

constexpr Build kVertical{
    .grand = false,
    .front = 235,
    .capstan = {127, 52},
    .wippen = {179, 74},
    .jack = {108, 80}, // so far under the butt that the stroke stays within 0.7 mm of key of a straight line
    .jackToe = {-22, 4},
    .jackTop = {126, 145},
    .hammerY = 151,
    .crown = {60, 120.93},
    .leather = {0, -6},
    .knuckle = 0,
    .escape = 2.5,
    .freeLink = 16.03,
    .damperLever = {191, 138},
    .spoon = 33,
    .afterEscape = 9,
};

constexpr Build kGrand{
    .grand = true,
    .front = 250,
    .capstan = {130, 50},
    .wippen = {200, 68},
    .jack = {105, 70},
    .jackToe = {-25, 6},
    .jackTop = {105, 115},
    .hammerY = 128,
    .crown = {130, 50},
    .leather = {0, -8},
    .knuckle = 5,
    .escape = 3,
    .freeLink = 18.87,
    .damperLever = {},
    .spoon = 0,
    .afterEscape = 0,
};

// The lever's centre above the hammers' heads, and the wire's foot at the player's end of the wippen.
constexpr Point kOverLever{154, 336};
constexpr Point kOverWire{-105, 10};

} // namespace

Build typicalBuild(const Piano& piano, const KeyArms& arms) {
    Build build = piano.vertical() ? kVertical : kGrand;
    if (piano.vertical() && piano.damping == Damping::overdamper) {
        build.over = true;
        build.damperLever = kOverLever;
        build.damperWire = kOverWire;
    }
    const double along = arms.C() - build.capstan.x;
    build.front = arms.F();
    for (Point* place : {&build.capstan, &build.wippen, &build.jack, &build.jackTop, &build.damperLever})
        place->x += along;
    return build;
}

} // namespace hammerline::kinematics
