// Situations from practice: directions of single work. Public technicians' lists, digests and articles,
// each named by its kind and month as collected; [G] marks amounts computed there from geometry.
#include "tests/core/scene.h"

#include <cmath>

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;

TEST_CASE("situations 9, 21: level at the balance rail, dip at the front rail, and never one for the other") {
    // technician's blog; an old manual in the public domain
    struct Row {
        const char* situation;
        std::optional<double> height;
        double dip;
        OperationId operation;
        Direction direction;
    };
    constexpr std::array rows = {
        Row{"9, high", 0.6, 10.2, operation::balancePunching, Direction::remove},
        Row{"9, low", -0.6, 10.2, operation::balancePunching, Direction::add},
        Row{"21, shallow and low", -0.6, 9.0, operation::balancePunching, Direction::add},
        Row{"21, shallow, level right", 0.0, 9.0, operation::frontPunching, Direction::remove},
        Row{"21, deep, level right", 0.0, 11.4, operation::frontPunching, Direction::add},
        Row{"21, deep and high", 0.6, 11.5, operation::balancePunching, Direction::remove},
    };
    for (const Row& row : rows) {
        Piano piano = upright();
        piano.arms[0] = arms(243, 222, 221, 127); // a lever of 2.1
        Scene scene(piano, "upright");
        scene.read(40, keyHeight, *row.height);
        if (row.dip != 10.2) scene.read(40, keyDip, row.dip);
        const Plan plan = scene.plan();
        INFO(row.situation);
        const Step* step = stepOf(plan, row.operation, 40);
        REQUIRE(step);
        CHECK(step->direction == row.direction);
        if (row.dip == 10.2) {
            CHECK(count(plan, operation::frontPunching) == 0);
            CHECK(std::abs(*step->atPart) > 0.20); // 0.27 to 0.30 to the line itself; the zone may be used
            CHECK(std::abs(*step->atPart) < 0.31);
        }
        if (row.height == 0.0) CHECK(count(plan, operation::balancePunching) == 0);
    }
}

TEST_CASE("situation 12: the aftertouch gauge tells the front punching (college list, June 2004)") {
    // .045 in where .040 is wanted: add .005 in; where .050 is wanted: take .005 out. F/P makes it 1.1 times that.
    Scene scene(upright(), "upright");
    for (const Response& response : firstResponses(scene.record.piano, {4.9, 5.3})) {
        if (response.operation != operation::frontPunching || response.keys == KeyColour::sharp) continue;
        for (const Effect& effect : response.effects)
            if (effect.dimension == aftertouch) CHECK(effect.perUnit * 0.127 == Approx(-0.127 * 235 / 214));
    }
    CHECK(directionOf(operation::frontPunching, 0.127, scene.record.piano) == Direction::add);
    CHECK(directionOf(operation::frontPunching, -0.127, scene.record.piano) == Direction::remove);
}

TEST_CASE("situation 13: aftertouch held by letting the dip float, or dip held (list posts 1998, 2005)") {
    // Note X: dip 10.16, aftertouch 0.51 (.020 in); what the others read makes it so.
    const auto noteX = [](double lost, Float floating) {
        Scene scene(withRatio(upright(), 43.1 / (10.16 - lost - 0.51)), "upright");
        for (const auto& [dimension, value] :
             {std::pair{keyDip, 10.16}, {lostMotion, lost}, {blow, 46.0}, {letOff, 2.9}, {aftertouch, 0.51}})
            scene.read(40, dimension, value);
        PlanOptions options;
        options.floating = floating;
        return scene.plan(options);
    };
    const Plan floats = noteX(0.15, Float::dip);
    const Step* paper = stepOf(floats, operation::frontPunching, 40);
    REQUIRE(paper);
    CHECK(paper->direction == Direction::remove);
    CHECK(*expectedAt(floats, 40, keyDip) > 10.16);
    CHECK(*expectedAt(floats, 40, keyDip) < 10.6); // and not flagged
    CHECK(*expectedAt(floats, 40, aftertouch) > 0.7);
    // dip held: lost motion is there to give
    CHECK_FALSE(stepOf(noteX(0.4, Float::aftertouch), operation::frontPunching, 40));
}

TEST_CASE("situation 4: the sharps' line lowered by 1/32 inch (college list, December 1998)") {
    for (const double back : {200.0, 242.0}) { // the source's two back arms
        Piano piano = upright();
        piano.arms[1] = arms(189, 170, back, 115);
        Scene scene(piano, "upright");
        for (int n = 1; n <= 88; ++n) {
            if (scene.isNatural(n)) continue;
            scene.read(n, sharpHeight, 12.3);
            scene.read(n, keyDip, 10.0);
            scene.read(n, sharpProud, 2.3);
            scene.aim(n, sharpHeight, 11.3, 11.5, 11.7); // 0.8 lower
            scene.aim(n, keyDip, 8.8, 9.2, 9.8);         // with the front stop as it is
        }
        PlanOptions full;
        full.intent = Intent::full;
        const Plan plan = scene.plan(full);
        CHECK(count(plan, operation::balancePunching) == 36);
        const Step* step = stepOf(plan, operation::balancePunching, 38);
        REQUIRE(step);
        CHECK(step->direction == Direction::remove);
        CHECK(*step->atPart == Approx(-0.8 / (1 + 189 / back)).margin(0.01)); // -0.41 to -0.45
        CHECK(*expectedAt(plan, 38, keyDip) == Approx(9.2).margin(0.1));      // shallower by as much
        const auto& stale = plan.becomesStale;
        CHECK(std::find(stale.begin(), stale.end(), Cell{{38}, sharpProud}) != stale.end());
    }
}

TEST_CASE("situation 2: deep naturals first, no sharp is touched (list post, April 1996)") {
    Scene scene(upright(), "upright");
    for (int n = 1; n <= 88; ++n) {
        scene.read(n, keyDip, scene.isNatural(n) ? 11.1 : 12.7);
        if (!scene.isNatural(n)) scene.read(n, sharpProud, 1.2);
    }
    const Plan plan = scene.plan();
    CHECK(count(plan, operation::frontPunching) == 52);
    for (const Step& step : plan.steps) {
        CHECK(scene.isNatural(step.note->value));
        CHECK(step.direction == Direction::add);
    }
    CHECK(scene.verdict(2, sharpProud) == Verdict::low);
}

TEST_CASE("situation 56: spoons by the share of the blow at which the damper starts (training site)") {
    // 1/3 to 1/2 of 46: 15.3 to 23.0 mm
    Scene scene(upright(), "upright");
    scene.aimAll(damperStart, 46.0 / 3, 19.2, 23.0);
    scene.read(40, damperStart, 12);
    scene.read(45, damperStart, 27);
    scene.read(50, damperStart, 19);
    const Plan plan = scene.plan();
    REQUIRE(stepOf(plan, operation::spoonBend, 40));
    REQUIRE(stepOf(plan, operation::spoonBend, 45));
    CHECK(stepOf(plan, operation::spoonBend, 40)->direction == Direction::away);
    CHECK(stepOf(plan, operation::spoonBend, 45)->direction == Direction::toward);
    CHECK_FALSE(stepOf(plan, operation::spoonBend, 50));
    Piano overdamper = upright();
    overdamper.damping = Damping::overdamper;
    Scene other(overdamper, "upright");
    other.read(40, damperStart, 12);
    CHECK(count(other.plan(), operation::spoonBend) == 0);
}

TEST_CASE("situations 7, 51, 57: what comes before what") {
    const auto before = [](ActionKind kind, OperationId first, OperationId then) {
        return placeInWork(first, kind) < placeInWork(then, kind);
    };
    // 57 (members' thread): the pedal's line by the wires, then the spoons; 51 (digest, February 1997): checks, then
    // springs, which have no operation of their own but the step after the checks
    CHECK(before(ActionKind::upright, operation::damperWire, operation::spoonBend));
    const auto grand = sortedWork(ActionKind::grand);
    const auto at = [&](std::string_view id) { return std::find(grand.begin(), grand.end(), id) - grand.begin(); };
    CHECK(at("G10") < at("G11"));
    // 7 (list post, June 2007): lost motion, then let-off and dip
    CHECK(before(ActionKind::upright, operation::capstanTurn, operation::letOffTurn));
    CHECK(before(ActionKind::upright, operation::letOffTurn, operation::frontPunching));
}

TEST_CASE("situation 34: let-off is not touched by balance, back rail or capstans, and its sign is the reading's") {
    // list post, February 2000 (conflicts with 33 on the direction of wear)
    const Piano piano = upright();
    for (const OperationId id : {operation::balancePunching, operation::balanceRailShim, operation::backRailShim,
                                 operation::capstanTurn, operation::restRailShim}) {
        CHECK_FALSE(disturbs(id, letOff, piano));
    }
    for (const OperationId id : {operation::balancePunching, operation::capstanTurn})
        CHECK(disturbs(id, aftertouch, piano));
    Scene scene(piano, "upright");
    scene.read(40, letOff, 3.9);
    scene.read(42, letOff, 1.9);
    const Plan plan = scene.plan();
    CHECK(stepOf(plan, operation::letOffTurn, 40)->direction == Direction::out);
    CHECK(stepOf(plan, operation::letOffTurn, 42)->direction == Direction::in);
}

TEST_CASE("situation 71: nothing is planned for a note that was not read") {
    Scene scene(upright(), "upright");
    for (const int n : {1, 16, 31, 46, 61, 88})
        scene.read(n, letOff, 5.0);
    const Plan plan = scene.plan();
    CHECK(plan.steps.size() == 6);
    for (const Expected& each : plan.expected)
        CHECK((each.cell.note.value - 1) % 15 <= 12); // only the six
}

TEST_CASE("situation 76: by operation, then by note") {
    Scene scene(upright(), "upright");
    for (const int n : {70, 12, 40}) {
        scene.read(n, letOff, 5.0);
        scene.read(n, lostMotion, 1.2);
    }
    const Plan plan = scene.plan();
    REQUIRE(plan.steps.size() == 6);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(plan.steps[i].operation == operation::capstanTurn);
        CHECK(plan.steps[i + 3].operation == operation::letOffTurn);
    }
    CHECK(plan.steps[0].note->value == 12);
    CHECK(plan.steps[2].note->value == 70);
}
