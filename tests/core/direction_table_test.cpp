// The direction table at the end of bench-practice: each row one test. Basis: lever geometry and common practice, no
// source, except the turning directions (technicians' lists 2007, 2003: situations 23 to 25).
#include "core/operation/operation.h"

#include <catch2/catch.hpp>

using namespace hammerline;
using namespace hammerline::dimension;

namespace {

Piano pianoOf(ActionKind kind) {
    return *makePiano(kind);
}

/// Sign of the change of a dimension by one positive unit, 0 where the operation says nothing of it.
int change(const Piano& piano, OperationId operation, DimensionId dimension, KeyColour colour = KeyColour::natural) {
    for (const Response& response : firstResponses(piano, {4.9, 5.2})) {
        if (response.operation != operation || (response.keys && *response.keys != colour)) continue;
        for (const Effect& effect : response.effects)
            if (effect.dimension == dimension) return effect.perUnit > 0 ? 1 : -1;
    }
    return 0;
}

} // namespace

TEST_CASE("a capstan goes up anticlockwise seen from above and takes up lost motion") {
    const Piano upright = pianoOf(ActionKind::upright);
    CHECK(directionOf(operation::capstanTurn, 0.25, upright) == Direction::anticlockwise);
    CHECK(directionOf(operation::capstanTurn, -0.25, upright) == Direction::clockwise);
    CHECK(change(upright, operation::capstanTurn, lostMotion) == -1);
}

TEST_CASE("what the set-up says of a screw goes before what is customary: the turn changes, the effect does not") {
    Piano upright = pianoOf(ActionKind::upright);
    upright.capstanUp = Turn::clockwise;
    CHECK(directionOf(operation::capstanTurn, 0.25, upright) == Direction::clockwise);
    CHECK(directionOf(operation::capstanTurn, -0.25, upright) == Direction::anticlockwise);
    CHECK(change(upright, operation::capstanTurn, lostMotion) == -1);
    // In and out are along the thread: the word stays, only the turn behind it changes.
    CHECK(turnOf(operation::letOffTurn, upright) == Turn::clockwise);
    upright.letOffIn = Turn::anticlockwise;
    CHECK(directionOf(operation::letOffTurn, 0.125, upright) == Direction::in);
    CHECK(turnOf(operation::letOffTurn, upright) == Turn::anticlockwise);
    // A rocker's lifting screw is found by the trial until somebody says which it is; a faced capstan is not turned.
    upright.capstanUp.reset();
    upright.capstan = Capstan::rocker;
    CHECK_FALSE(turnOf(operation::capstanTurn, upright));
    upright.capstanUp = Turn::anticlockwise;
    CHECK(directionOf(operation::capstanTurn, 0.25, upright) == Direction::anticlockwise);
    upright.capstan = Capstan::fixed;
    CHECK_FALSE(turnOf(operation::capstanTurn, upright));
    CHECK(directionOf(operation::capstanTurn, 1, upright) == Direction::add);
}

TEST_CASE("a drop button takes up lost motion clockwise") {
    const Piano drop = pianoOf(ActionKind::drop);
    REQUIRE(drop.capstan == Capstan::dropButton);
    CHECK(directionOf(operation::capstanTurn, 0.25, drop) == Direction::clockwise);
    CHECK(change(drop, operation::capstanTurn, lostMotion) == -1);
}

TEST_CASE("a grand capstan up shortens the blow and adds aftertouch") {
    const Piano grand = pianoOf(ActionKind::grand);
    CHECK(change(grand, operation::capstanTurn, blow) == -1);
    CHECK(change(grand, operation::capstanTurn, aftertouch) == 1);
    CHECK(change(grand, operation::capstanTurn, lostMotion) == 0);
    CHECK(directionOf(operation::capstanTurn, -0.125, grand) == Direction::clockwise);
}

TEST_CASE("a let-off screw turned in puts let-off farther and adds aftertouch") {
    for (const ActionKind kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand}) {
        const Piano piano = pianoOf(kind);
        CHECK(change(piano, operation::letOffTurn, letOff) == 1);
        CHECK(change(piano, operation::letOffTurn, aftertouch) == 1);
        CHECK(directionOf(operation::letOffTurn, 0.125, piano) == Direction::in);
        CHECK(directionOf(operation::letOffTurn, -0.125, piano) == Direction::out);
    }
    CHECK(change(pianoOf(ActionKind::grand), operation::letOffTurn, drop) == -1);
}

TEST_CASE("a drop screw turned in makes the drop larger") {
    const Piano grand = pianoOf(ActionKind::grand);
    CHECK(change(grand, operation::dropTurn, drop) == 1);
    CHECK(directionOf(operation::dropTurn, -0.125, grand) == Direction::out);
}

TEST_CASE("thicker rest rail pads shorten the blow, open lost motion and start the dampers earlier") {
    const Piano upright = pianoOf(ActionKind::upright);
    for (const OperationId rail : {operation::restRailShim, operation::railClothShim}) {
        CHECK(change(upright, rail, blow) == -1);
        CHECK(change(upright, rail, lostMotion) == 1);
        CHECK(change(upright, rail, damperStart) == -1);
        CHECK(change(upright, rail, aftertouch) == 0);
        CHECK(directionOf(rail, 1, upright) == Direction::add);
    }
}

TEST_CASE("a balance punching raises the key and deepens the dip") {
    const Piano upright = pianoOf(ActionKind::upright);
    for (const OperationId shim : {operation::balancePunching, operation::balanceRailShim}) {
        CHECK(change(upright, shim, keyHeight) == 1);
        CHECK(change(upright, shim, sharpHeight, KeyColour::sharp) == 1);
        CHECK(change(upright, shim, keyHeight, KeyColour::sharp) == 0);
        CHECK(change(upright, shim, keyDip) == 1);
        CHECK(directionOf(shim, -0.3, upright) == Direction::remove);
    }
}

TEST_CASE("a front punching makes the dip shallower") {
    const Piano upright = pianoOf(ActionKind::upright);
    CHECK(change(upright, operation::frontPunching, keyDip) == -1);
    CHECK(change(upright, operation::frontPunching, aftertouch) == -1);
    CHECK(change(upright, operation::frontPunching, keyHeight) == 0);
}

TEST_CASE("a shim under the back rail lowers the key front and takes up lost motion and dip") {
    const Piano upright = pianoOf(ActionKind::upright);
    CHECK(change(upright, operation::backRailShim, keyHeight) == -1);
    CHECK(change(upright, operation::backRailShim, lostMotion) == -1);
    CHECK(change(upright, operation::backRailShim, keyDip) == -1);
    // a new thick back cloth is this with nobody's intent: key height low and lost motion gone
    CHECK(change(upright, operation::backRailShim, aftertouch) == 0);
}

TEST_CASE("a check wire toward the catcher holds the hammer nearer the string") {
    const Piano upright = pianoOf(ActionKind::upright);
    CHECK(change(upright, operation::checkBend, checking) == -1);
    CHECK(directionOf(operation::checkBend, 1, upright) == Direction::toward);
}

TEST_CASE("a spoon toward the damper lever starts the damper earlier") {
    const Piano upright = pianoOf(ActionKind::upright);
    CHECK(change(upright, operation::spoonBend, damperStart) == -1);
    CHECK(directionOf(operation::spoonBend, 0.2, upright) == Direction::toward);
    CHECK(directionOf(operation::spoonBend, -0.2, upright) == Direction::away);
}

TEST_CASE("a strap wire away from the butt makes the strap tighter") {
    const Piano upright = pianoOf(ActionKind::upright);
    CHECK(change(upright, operation::bridleBend, strap) == -1); // less slack
    CHECK(directionOf(operation::bridleBend, 1, upright) == Direction::away);
}

TEST_CASE("capstans up make the checking nearer") {
    for (const ActionKind kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand})
        CHECK(change(pianoOf(kind), operation::capstanTurn, checking) == -1);
}

TEST_CASE("the blow is set by the rest rail before the capstans take up lost motion") {
    for (const ActionKind kind : {ActionKind::upright, ActionKind::drop})
        CHECK(placeInWork(operation::restRailShim, kind) < placeInWork(operation::capstanTurn, kind));
}

TEST_CASE("a learned answer of the other sign turns the word round") {
    const Piano drop = pianoOf(ActionKind::drop);
    CHECK(otherWay(operation::capstanTurn, Direction::clockwise, drop) == Direction::anticlockwise);
    CHECK(otherWay(operation::letOffTurn, directionOf(operation::letOffTurn, -0.125, drop), drop) == Direction::in);
}

TEST_CASE("operations of the wrong kind of action do not exist") {
    const Piano grand = pianoOf(ActionKind::grand);
    for (const OperationId id : {operation::restRailShim, operation::railClothShim, operation::spoonBend,
                                 operation::backRailShim, operation::bridleBend, operation::halfBlowRod})
        CHECK_FALSE(applies(id, grand));
    CHECK(applies(operation::leverTiming, grand));
    const Piano upright = pianoOf(ActionKind::upright);
    for (const OperationId id : {operation::dropTurn, operation::leverTiming, operation::playerScrew})
        CHECK_FALSE(applies(id, upright));
    Piano overdamper = upright;
    overdamper.damping = Damping::overdamper;
    CHECK_FALSE(applies(operation::spoonBend, overdamper));
    for (const Response& response : firstResponses(grand, {4.85, 5.1}))
        CHECK(applies(response.operation, grand));
}
