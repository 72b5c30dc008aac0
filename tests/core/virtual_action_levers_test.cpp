// The virtual action behaves as an action does, before anything is tested against it. Directions: bench-practice 6,
// the cross-check list; amounts qualitatively by trade-facts 4d (derived there, R = 5).
#include "core/spec/spec.h"
#include "tests/virtual_action/action.h"

#include <catch2/catch.hpp>

using namespace hammerline;
using virtual_action::Action;

namespace {

SpecSheet sheetOf(ActionKind kind) {
    return builtInSheet(defaultSheet(kind)).value();
}

Action regulated(ActionKind kind = ActionKind::upright) {
    return {makePiano(kind).value(), sheetOf(kind), {0, false}, 1};
}

double at(const Action& action, int note, DimensionId id) {
    return action.truth({NoteNumber{note}, id}).value();
}

/// Change of a reading at a note by something done there.
template <class Act>
double change(Action action, int note, DimensionId id, Act act) {
    const double before = at(action, note, id);
    act(action);
    return at(action, note, id) - before;
}

} // namespace

TEST_CASE("a virtual piano just regulated reads the nominals of its sheet") {
    const Action action = regulated();
    for (const int note : {1, 20, 41, 64, 88}) {
        CHECK(at(action, note, dimension::blow) == Approx(46).margin(1e-6));
        CHECK(at(action, note, dimension::lostMotion) == Approx(0.15).margin(1e-6));
        CHECK(at(action, note, dimension::checking) == Approx(15.5).margin(1e-6));
        CHECK(at(action, note, dimension::damperStart) == Approx(21).margin(1e-6));
    }
    CHECK(at(action, 4, dimension::keyHeight) == Approx(0).margin(1e-6));
    CHECK(at(action, 2, dimension::sharpHeight) == Approx(12.3).margin(1e-6));
    CHECK(at(action, 30, dimension::letOff) == Approx(2.9).margin(1e-6));
}

TEST_CASE("the ratio of hammer travel to key travel lies between 4.6 and 5.1 on the naturals") {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        const Action action(makePiano(ActionKind::upright).value(), sheetOf(ActionKind::upright), {0, true}, seed);
        const int note = 40;
        const double ratio = (at(action, note, dimension::blow) - at(action, note, dimension::letOff)) /
                             (at(action, note, dimension::keyDip) - at(action, note, dimension::lostMotion) -
                              at(action, note, dimension::aftertouch));
        CHECK(ratio > 4.55);
        CHECK(ratio < 5.16);
    }
}

TEST_CASE("the ratio is larger near rest than near the string") { // computation 6: about 1.06 R and 0.96 R
    const Action action = regulated();
    const auto key = [&](double letOffTurns) {
        Action other = action;
        other.turnLetOff(40, letOffTurns);
        return std::pair(at(other, 40, dimension::letOff),
                         at(other, 40, dimension::keyDip) - at(other, 40, dimension::aftertouch));
    };
    const auto [nearO, nearKey] = key(-0.1);
    const auto [farO, farKey] = key(0.1);
    const double nearString = (farO - nearO) / (nearKey - farKey);
    const double whole = (at(action, 40, dimension::blow) - at(action, 40, dimension::letOff)) /
                         (at(action, 40, dimension::keyDip) - at(action, 40, dimension::lostMotion) -
                          at(action, 40, dimension::aftertouch));
    CHECK(nearString < whole);
    CHECK(nearString > 0.85 * whole);
}

TEST_CASE("each thing a hand does moves the readings the way the trade says") {
    const Action upright = regulated();
    const int n = 40;
    const auto capstan = [&](Action& a) { a.turnCapstan(n, 0.25); };
    CHECK(change(upright, n, dimension::lostMotion, capstan) < -0.3);
    CHECK(change(upright, n, dimension::aftertouch, capstan) > 0.3);
    CHECK(change(upright, n, dimension::checking, capstan) < 0);
    CHECK(change(upright, n, dimension::letOff, capstan) == Approx(0).margin(1e-9));

    const auto letOff = [&](Action& a) { a.turnLetOff(n, 0.125); };
    CHECK(change(upright, n, dimension::letOff, letOff) > 0.3);
    CHECK(change(upright, n, dimension::aftertouch, letOff) > 0.05);
    CHECK(change(upright, n, dimension::keyDip, letOff) == Approx(0).margin(1e-9));

    const auto balance = [&](Action& a) { a.punchBalance(n, 0.2); };
    CHECK(change(upright, n, dimension::keyHeight, balance) == Approx(0.2 * 2.65).epsilon(0.06));
    CHECK(change(upright, n, dimension::keyDip, balance) == Approx(0.2 * 2.75).epsilon(0.06));
    CHECK(change(upright, n, dimension::aftertouch, balance) > 0.5);
    CHECK(change(upright, n, dimension::lostMotion, balance) < 0);
    CHECK(change(upright, n, dimension::letOff, balance) == Approx(0).margin(1e-9));

    const auto front = [&](Action& a) { a.punchFront(n, 0.5); };
    CHECK(change(upright, n, dimension::keyDip, front) == Approx(-0.55).epsilon(0.05));
    CHECK(change(upright, n, dimension::aftertouch, front) == Approx(-0.55).epsilon(0.05));

    const auto back = [&](Action& a) { a.shimBackRail(0.5); };
    CHECK(change(upright, n, dimension::lostMotion, back) < -0.5);
    CHECK(change(upright, n, dimension::keyDip, back) < -0.5);
    CHECK(change(upright, n, dimension::aftertouch, back) == Approx(0).margin(1e-9));

    const auto pads = [&](Action& a) { a.padRail({{1, 1.0}, {88, 1.0}}); };
    const double blow = change(upright, n, dimension::blow, pads);
    CHECK(blow < -1.1);
    CHECK(blow > -1.45);
    CHECK(change(upright, n, dimension::lostMotion, pads) ==
          Approx(-blow / 4.85).epsilon(0.15)); // a shorter blow opens lost motion
    CHECK(change(upright, n, dimension::damperStart, pads) == Approx(blow).epsilon(0.05));

    const auto filed = [&](Action& a) { a.settings(n).crownLost += 2; };
    for (const auto id : {dimension::blow, dimension::letOff, dimension::checking})
        CHECK(change(upright, n, id, filed) == Approx(2).margin(1e-9));
    CHECK(change(upright, n, dimension::aftertouch, filed) == Approx(0).margin(1e-9));

    const auto spoon = [&](Action& a) { a.bendSpoon(n, 0.2); };
    CHECK(change(upright, n, dimension::damperStart, spoon) < 0);
}

TEST_CASE("a capstan turned too far holds the hammer off the rail and shortens the blow") {
    Action action = regulated();
    action.turnCapstan(40, 0.5);
    CHECK(at(action, 40, dimension::lostMotion) < -0.3);
    CHECK(at(action, 40, dimension::blow) < 45);
}

TEST_CASE("aftertouch answers blow, let-off, dip and lost motion as the table of derived vectors does") {
    // trade-facts 4d: 1 mm of blow or let-off = 0.2 mm of aftertouch, dip and lost motion one to one (derived, R = 5)
    Action action = regulated();
    const int n = 40;
    const double a0 = at(action, n, dimension::aftertouch);
    Action shorter = action;
    shorter.padRail({{1, 1.5}, {88, 1.5}});
    shorter.turnCapstan(n, 0.2);
    CHECK(at(shorter, n, dimension::aftertouch) > a0);
    Action deeper = action;
    deeper.punchFront(n, -0.25);
    const double d = at(deeper, n, dimension::keyDip) - at(action, n, dimension::keyDip);
    CHECK(at(deeper, n, dimension::aftertouch) - a0 == Approx(d).margin(1e-6));
    Action lower = action;
    lower.turnCapstan(n, -0.25);
    const double m = at(lower, n, dimension::lostMotion) - at(action, n, dimension::lostMotion);
    CHECK(at(lower, n, dimension::aftertouch) - a0 == Approx(-m).epsilon(0.12));
    Action farther = action;
    farther.turnLetOff(n, 0.15);
    const double o = at(farther, n, dimension::letOff) - at(action, n, dimension::letOff);
    CHECK((at(farther, n, dimension::aftertouch) - a0) / o == Approx(0.2).epsilon(0.2));
}

TEST_CASE("on a grand each capstan sets its note's blow and there is no lost motion") {
    const Action grand = regulated(ActionKind::grand);
    const auto up = [](Action& a) { a.turnCapstan(40, 0.125); };
    CHECK(change(grand, 40, dimension::blow, up) < -0.5);
    CHECK(change(grand, 40, dimension::aftertouch, up) > 0.1);
    CHECK_FALSE(grand.truth({NoteNumber{40}, dimension::lostMotion}));
    const auto drop = [](Action& a) { a.turnDrop(40, 0.125); };
    CHECK(change(grand, 40, dimension::drop, drop) > 0.1);
    const auto letOff = [](Action& a) { a.turnLetOff(40, 0.1); };
    const double o = change(grand, 40, dimension::letOff, letOff);
    CHECK(change(grand, 40, dimension::drop, letOff) == Approx(-o).margin(1e-9));
}

TEST_CASE("wear moves the readings where wear does") { // situations 33: dip deeper, blow longer
    const SpecSheet sheet = sheetOf(ActionKind::upright);
    double dip = 0, blow = 0, lost = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const Piano piano = makePiano(ActionKind::upright).value();
        const Action fresh(piano, sheet, {0, true}, seed), worn(piano, sheet, {1, true}, seed);
        for (int note = 1; note <= 88; ++note) {
            blow += at(worn, note, dimension::blow) - at(fresh, note, dimension::blow);
            lost += at(worn, note, dimension::lostMotion) - at(fresh, note, dimension::lostMotion);
        }
        dip += at(worn, 1, dimension::keyDip) - at(fresh, 1, dimension::keyDip);
    }
    CHECK(dip / 20 > 0.1);
    CHECK(blow / 20 / 88 > 1);
    CHECK(lost / 20 / 88 > 0.1);
}

TEST_CASE("the same seed gives the same piano") {
    const Piano piano = makePiano(ActionKind::upright).value();
    const SpecSheet sheet = sheetOf(ActionKind::upright);
    const Action a(piano, sheet, {}, 7), b(piano, sheet, {}, 7), c(piano, sheet, {}, 8);
    CHECK(at(a, 33, dimension::letOff) == at(b, 33, dimension::letOff));
    CHECK(at(a, 33, dimension::letOff) != at(c, 33, dimension::letOff));
}
