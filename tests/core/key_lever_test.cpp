// The key lever against a key that is really turned: an independent model with an angle, no formula shared.
#include "core/operation/operation.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <cmath>

using namespace hammerline;

namespace {

KeyArms armsOf(double front, double pin, double back, double capstan) {
    return {fromMm(front), fromMm(pin), fromMm(back), fromMm(capstan), true};
}
const KeyArms kUprightNatural = armsOf(235, 214, 142, 127);

/// A straight key on two supports: through (x1, y1) and (x2, y2); its height at x.
double heightAt(double x, double x1, double y1, double x2, double y2) {
    return y1 + (x - x1) * (y2 - y1) / (x2 - x1);
}

struct Measured {
    double front, dip, capstanRest, capstanPressed;
};
/// Rests on back (-T) and balance, pressed onto front punching (P) and balance. Thicknesses over a start of 0; the
/// front punching lies `gap` below the key's rest.
Measured measure(const KeyArms& a, double back, double balance, double front, double gap = 9.3) {
    const double rest = heightAt(a.F(), -a.T(), back, 0, balance);
    const double pressed = heightAt(a.F(), 0, balance, a.P(), -gap + front);
    return {rest, rest - pressed, heightAt(-a.C(), -a.T(), back, 0, balance),
            heightAt(-a.C(), 0, balance, a.P(), -gap + front)};
}

} // namespace

TEST_CASE("the key lever gives the customary 2.65 on an upright and 2.11 on a grand") {
    // bench-practice 2.6, geometry from its arms
    CHECK(keyLever(kUprightNatural).heightPerBalance == Approx(2.65).margin(0.006));
    CHECK(keyLever(armsOf(250, 228, 225, 130)).heightPerBalance == Approx(2.11).margin(0.006));
    CHECK(keyLever(kUprightNatural).lostPerCapstan == Approx(1.85).margin(0.001));
    CHECK(keyLever(kUprightNatural).afterPerBalance == Approx(2.95).margin(0.01)); // computation 5: "about 2.95 s"
}

TEST_CASE("the key lever agrees with a straight key on its supports") {
    CHECK(rc::check("any sensible arms and shim", [] {
        const auto arms = armsOf(*rc::gen::inRange(180, 260), *rc::gen::inRange(150, 179), *rc::gen::inRange(125, 230),
                                 *rc::gen::inRange(100, 124));
        const double shim = *rc::gen::inRange(-100, 100) / 100.0;
        const KeyLever lever = keyLever(arms);
        const Measured before = measure(arms, 0, 0, 0), balance = measure(arms, 0, shim, 0),
                       back = measure(arms, shim, 0, 0), front = measure(arms, 0, 0, shim);
        const double toFront = arms.F() / arms.C();
        const auto near = [](double a, double b) { return std::abs(a - b) < 1e-9; };
        RC_ASSERT(near(balance.front - before.front, shim * lever.heightPerBalance));
        RC_ASSERT(near(balance.dip - before.dip, shim * lever.dipPerBalance));
        RC_ASSERT(near(balance.capstanRest - before.capstanRest, shim * lever.capstanPerBalance));
        RC_ASSERT(near((balance.capstanRest - before.capstanRest) * toFront, shim * lever.lostPerBalance));
        RC_ASSERT(near((balance.capstanPressed - before.capstanPressed) * toFront, shim * lever.afterPerBalance));
        RC_ASSERT(near(front.dip - before.dip, -shim * lever.dipPerFront));
        RC_ASSERT(near(front.capstanPressed - before.capstanPressed, -shim * lever.dipPerFront / toFront));
        RC_ASSERT(near(back.front - before.front, -shim * lever.heightPerBack));
        RC_ASSERT(near(back.dip - before.dip, -shim * lever.heightPerBack));
        RC_ASSERT(near(back.capstanRest - before.capstanRest, shim * lever.capstanPerBack));
        RC_ASSERT(near(back.capstanPressed, before.capstanPressed));
    }));
}

TEST_CASE("back and balance rail shims take up lost motion and leave the key front where it was") {
    // situation 22 and scenario S10: F 235, T 142, C 127
    const auto [back, balance] = frameShims(kUprightNatural, 3.2);
    CHECK(back == Approx(1.80).margin(0.005));
    CHECK(balance == Approx(1.12).margin(0.005));
    const auto [backOld, balanceOld] = frameShims(kUprightNatural, 2.9);
    CHECK(backOld == Approx(1.63).margin(0.005));
    CHECK(balanceOld == Approx(1.02).margin(0.005));
    const Measured before = measure(kUprightNatural, 0, 0, 0), after = measure(kUprightNatural, back, balance, 0);
    CHECK(after.front == Approx(before.front).margin(1e-9));
    CHECK((after.capstanRest - before.capstanRest) * 235 / 127 == Approx(3.2));
}

TEST_CASE("one measured key: sharps on the same row of pins travel less for the same capstan lift") {
    // situation 1: list post, November 2001 (243.29 natural, 189.08 sharp, 127 capstan): 1.92 and 1.49
    CHECK(keyLever(armsOf(243.29, 220, 200, 127)).lostPerCapstan == Approx(1.916).margin(0.001));
    CHECK(keyLever(armsOf(189.08, 170, 200, 127)).lostPerCapstan == Approx(1.489).margin(0.001));
    CHECK(10.00 / 1.916 == Approx(5.22).margin(0.005));
    CHECK(5.22 * keyLever(armsOf(189.08, 170, 200, 127)).lostPerCapstan == Approx(7.77).margin(0.1));
}

TEST_CASE("a fixed capstan is faced by lost motion over the key ratio") {
    // situation 29: list posts, June 2005; 2.0 mm at 1.916 is 1.04 mm
    Piano piano = *makePiano(ActionKind::upright);
    piano.capstan = Capstan::fixed;
    piano.arms[0] = armsOf(243.29, 220, 142, 127);
    CHECK(unitOf(operation::capstanTurn, piano) == AmountUnit::mm);
    CHECK(directionOf(operation::capstanTurn, 1.04, piano) == Direction::add);
    for (const Response& response : firstResponses(piano, {5, 5.3}))
        if (response.operation == operation::capstanTurn && response.keys == KeyColour::natural)
            CHECK(-2.0 / response.effects.front().perUnit == Approx(1.04).margin(0.005));
}
