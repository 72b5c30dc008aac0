// Scenarios of bench-practice 6 at the level of the plan: their numbers, with the arms and sheets they state.
#include "tests/core/scene.h"

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;

TEST_CASE("S3: let-off with nothing learned is three trials of an eighth OUT and no number of turns") {
    Scene scene(upright(), "upright");
    const Zones zones(scene.sheet, scene.record.piano);
    for (int n = 1; n <= 88; ++n)
        scene.read(n, letOff, toTrade(zones.at({{n}, letOff})->nominal, Kind::length));
    const std::map<int, double> out = {{5, 5.1},  {9, 4.6},  {14, 4.2}, {20, 4.7}, {26, 5.0},
                                       {33, 5.1}, {38, 4.5}, {45, 4.4}, {50, 4.6}, {56, 4.2},
                                       {61, 4.4}, {70, 4.5}, {75, 4.3}, {80, 4.0}, {64, 1.2}};
    for (const auto& [note, value] : out)
        scene.read(note, letOff, value);
    const Plan plan = scene.plan();
    CHECK(count(plan, operation::letOffTurn) == static_cast<int>(out.size()));
    REQUIRE(plan.trials.size() == 1);
    CHECK(plan.trials[0].operation == operation::letOffTurn);
    CHECK(plan.trials[0].amount == 0.125);
    CHECK(plan.trials[0].direction == Direction::out);
    CHECK(plan.trials[0].notes.size() == 3);
    for (const Step& step : plan.steps) {
        const bool trial = std::find(plan.trials[0].notes.begin(), plan.trials[0].notes.end(), *step.note) !=
                           plan.trials[0].notes.end();
        CHECK(step.amount.has_value() == trial);
        if (step.amount) CHECK(*step.amount == -0.125);
        CHECK(step.stopIf == "eye-twists");
    }
    const Step* F3 = stepOf(plan, operation::letOffTurn, 33);
    REQUIRE(F3);
    CHECK(F3->id == "let-off-turn:33");
    CHECK(F3->direction == Direction::out);
    CHECK(*F3->aim == Approx(2.9));
    CHECK(stepOf(plan, operation::letOffTurn, 64)->direction == Direction::in);

    // the trials are done and read again: 4.2 -> 3.5, 4.0 -> 3.2, 4.5 -> 3.8
    const std::array<std::array<double, 2>, 3> answers = {{{4.2, 3.5}, {4.0, 3.2}, {4.5, 3.8}}};
    const auto trial = plan.trials[0].notes;
    for (std::size_t i = 0; i < 3; ++i)
        scene.read(trial[i].value, letOff, answers[i][0]);
    for (const NoteNumber note : trial) {
        Done done;
        done.operation = operation::letOffTurn;
        done.notes = {note};
        done.amount = -0.125;
        done.pass = 1;
        scene.record.done.push_back(done);
    }
    scene.read(33, letOff, 5.1);
    scene.nextPass();
    for (std::size_t i = 0; i < 3; ++i)
        scene.read(trial[i].value, letOff, answers[i][1]);
    scene.read(33, letOff, 5.1);
    scene.read(34, letOff, 3.7);
    const Plan learned = scene.plan();
    for (const Response& response : learned.responses)
        if (response.operation == operation::letOffTurn) {
            CHECK(response.learned);
            CHECK(response.pairs == 3);
            CHECK(response.effects.front().perUnit == Approx(5.9).margin(0.05)); // a turn OUT brings it 5.9 nearer
        }
    F3 = stepOf(learned, operation::letOffTurn, 33);
    REQUIRE(F3);
    REQUIRE(F3->amount);
    CHECK(*F3->amount == Approx(-0.375));
    CHECK(*F3->go == Approx(-0.25));
    CHECK(handAmount(*F3->amount, 0.25) == "1/4-look-then-on");
    const Step* close = stepOf(learned, operation::letOffTurn, 64);
    REQUIRE(close);
    CHECK(handAmount(*close->amount, 0.25) == "under-1/4");
    CHECK(close->direction == Direction::in);
    for (const Step& step : learned.steps)
        if (step.amount) CHECK(std::abs(*step.amount) < 1.0);
}

TEST_CASE("S7: one half of the rest rail has lost its cushions") {
    Piano piano = upright();
    piano.restRail = {{1, 44}, {45, 88}};
    piano.brackets = {{1, 44}, {45, 88}};
    piano.ratio[0] = 5.0;
    piano.ratio[1] = 5.0;
    Scene scene(piano, "old-upright");
    for (int n = 1; n <= 88; ++n) {
        scene.read(n, blow, n <= 44 ? 52 : 46);
        scene.read(n, lostMotion, n <= 44 ? 0.0 : 0.3);
        scene.read(n, letOff, 3.0);
        scene.read(n, keyDip, 10.0);
        scene.read(n, aftertouch, n <= 44 ? 0.2 : 1.1);
    }
    const Plan plan = scene.plan();
    const Step* rail = commonOf(plan, operation::restRailShim, 20);
    REQUIRE(rail);
    CHECK(rail->id == "rest-rail-shim:1-44");
    CHECK(rail->direction == Direction::add);
    CHECK(rail->amounts.at(1) == Approx(4.69).margin(0.03));
    CHECK(rail->amounts.at(44) == Approx(4.69).margin(0.03));
    CHECK(*rail->go == 2);
    CHECK_FALSE(commonOf(plan, operation::restRailShim, 60));
    const Step* capstan = stepOf(plan, operation::capstanTurn, 20);
    REQUIRE(capstan);
    CHECK(*capstan->atPart == Approx(0.49).margin(0.02));
    CHECK((!capstan->amount || capstan->why == "trial"));
    CHECK(rail->order < capstan->order);
    CHECK(*expectedAt(plan, 20, aftertouch) == Approx(1.1).margin(0.05));
    CHECK(*expectedAt(plan, 20, blow) == Approx(46).margin(0.1));
    for (const Cell& cell : plan.becomesStale)
        CHECK(cell.note.value <= 44);
    for (const Step& step : plan.steps)
        for (const NoteNumber note : step.notes)
            CHECK(note.value <= 44);
}

TEST_CASE("S8: a grand's short blow is its own capstan, down; nothing but direction where nothing is learned") {
    Piano piano = *makePiano(ActionKind::grand);
    piano.sections = {{{1, 20}, ""}, {{21, 41}, ""}, {{42, 62}, ""}, {{63, 88}, ""}};
    piano.sectionsEntered = true;
    piano.ratio[0] = 4.92;
    Scene scene(piano, "grand");
    for (const auto& [dimension, value] : {std::pair{blow, 41.7}, {letOff, 2.4}, {keyDip, 9.8}, {aftertouch, 1.80}})
        scene.read(21, dimension, value);
    scene.read(58, drop, 4.5);
    scene.read(58, letOff, 1.6);
    const Plan plan = scene.plan();
    const Step* capstan = stepOf(plan, operation::capstanTurn, 21);
    REQUIRE(capstan);
    CHECK(capstan->direction == Direction::clockwise);
    CHECK(*capstan->atPart == Approx(-0.35).margin(0.01));
    CHECK(*capstan->aim == Approx(45).margin(0.1));
    CHECK(*expectedAt(plan, 21, blow) == Approx(45).margin(0.1));
    CHECK(*expectedAt(plan, 21, aftertouch) == Approx(1.13).margin(0.02));
    const Step* dropStep = stepOf(plan, operation::dropTurn, 58);
    REQUIRE(dropStep);
    CHECK(dropStep->direction == Direction::out);
    CHECK(dropStep->stopIf == "weak-spring-first");
    CHECK(*dropStep->aim == Approx(1.5));
    CHECK((!dropStep->amount || dropStep->why == "trial"));
    for (const Step& step : plan.steps)
        for (const NoteNumber note : step.notes)
            CHECK((note.value == 21 || note.value == 58));
    CHECK(count(plan, operation::spoonBend) == 0);
    CHECK(count(plan, operation::restRailShim) == 0);
}

TEST_CASE("S9: deep naturals come before buried sharps") {
    Scene scene(upright(), "upright");
    for (int n = 1; n <= 88; ++n) {
        const bool natural = colourOf({n}, scene.record.piano) == KeyColour::natural;
        scene.read(n, keyDip, natural ? 11.2 : 10.9);
        if (natural) scene.read(n, aftertouch, 1.9);
        if (!natural) scene.read(n, sharpHeight, 12.0);
        if (!natural) scene.read(n, sharpProud, 1.1);
    }
    PlanOptions options;
    options.floating = Float::dip;
    for (const PlanOptions& each : {PlanOptions{}, options}) {
        const Plan plan = scene.plan(each);
        CHECK(count(plan, operation::frontPunching) == 52);
        const Step* step = stepOf(plan, operation::frontPunching, 40);
        REQUIRE(step);
        CHECK(step->direction == Direction::add);
        // Dip 10.2 + 0.7 t and aftertouch 1.1 - 0.4 t with 11.2 - 1.9 between them: t = 0.18, dip 10.33, 0.79 of paper.
        CHECK(*step->atPart == Approx(0.79).margin(0.01));
        CHECK(*step->amount == Approx(0.79).margin(0.01));
        CHECK_FALSE(step->stack.empty());
        CHECK(*expectedAt(plan, 40, keyDip) == Approx(10.33).margin(0.02));
        CHECK(*expectedAt(plan, 40, aftertouch) == Approx(1.03).margin(0.02));
        CHECK(count(plan, operation::balancePunching) == 0);
        for (const Step& s : plan.steps)
            CHECK(colourOf(*s.note, scene.record.piano) == KeyColour::natural);
    }
}

TEST_CASE("S10: lost motion everywhere is one round of capstans, and frame shims only without thread") {
    Piano piano = upright();
    piano.ratio = {5.0, 5.0};
    Scene scene(piano, "old-upright");
    for (int n = 1; n <= 88; ++n) {
        scene.read(n, lostMotion, 2.2);
        scene.read(n, blow, 46);
        scene.read(n, letOff, 3.0);
        scene.read(n, keyDip, 9.8);
    }
    const Plan plan = scene.plan();
    CHECK(count(plan, operation::capstanTurn) == 88);
    CHECK(count(plan, operation::backRailShim) == 0);
    CHECK(count(plan, operation::balanceRailShim) == 0);
    const Step* step = stepOf(plan, operation::capstanTurn, 40);
    REQUIRE(step);
    CHECK(step->direction == Direction::anticlockwise);
    CHECK(*step->atPart == Approx(1.03).margin(0.01));
    CHECK(*expectedAt(plan, 40, lostMotion) == Approx(0.29).margin(0.01));
    CHECK(*expectedAt(plan, 40, aftertouch) == Approx(0.9).margin(0.02));
}

TEST_CASE("S11: a drop action takes up lost motion clockwise") {
    Scene scene(*makePiano(ActionKind::drop), "drop");
    for (int n = 1; n <= 88; ++n)
        scene.read(n, lostMotion, 0.9 + 0.5 * (n % 5) / 4);
    const Plan plan = scene.plan();
    CHECK(count(plan, operation::capstanTurn) == 88);
    for (const Step& step : plan.steps) {
        CHECK(step.direction == Direction::clockwise);
        CHECK(*step.aim == Approx(0.2).margin(0.01));
        CHECK(*step.aim > 0);
    }
}

TEST_CASE("S1: a sunk middle is shimmed at the rail's screws, never key by key") {
    Piano piano = upright();
    piano.balanceScrews = {1, 14, 27, 40, 53, 66, 79, 88};
    piano.restRail = {{1, 44}, {45, 88}};
    piano.brackets = {{1, 44}, {45, 88}};
    piano.ratio = {5.0, 5.0};
    Scene scene(piano, "upright");
    for (int n = 1; n <= 88; ++n) {
        if (colourOf({n}, piano) == KeyColour::sharp) continue;
        const double sunk = 1.19 * std::exp(-std::pow((n - 39) / 18.0, 2));
        scene.read(n, keyHeight, -std::round(sunk * 100) / 100);
        scene.read(n, keyDip, 10.1 - 1.1 * sunk);
        scene.read(n, lostMotion, 0.2);
        scene.read(n, blow, 46);
        scene.read(n, letOff, n <= 26 ? 3.2 : n <= 52 ? 2.9 : n <= 70 ? 2.4 : 2.1);
        scene.read(n, aftertouch, 1.3 - 1.1 * sunk);
    }
    PlanOptions options;
    options.accepted["sunk-balance-rail"] = "";
    const Plan plan = scene.plan(options);
    const Step* rail = commonOf(plan, operation::balanceRailShim, 39);
    REQUIRE(rail);
    CHECK(count(plan, operation::balancePunching) < 5);
    double largest = 0;
    for (const auto& [place, amount] : rail->amounts)
        largest = std::max(largest, amount);
    CHECK(largest == Approx(0.45).margin(0.02));
    CHECK(rail->amounts.at(1) == Approx(0).margin(0.03));
    CHECK(rail->amounts.at(88) == Approx(0).margin(0.03));
    CHECK(*expectedAt(plan, 39, keyHeight) == Approx(0).margin(0.15));
    CHECK(*expectedAt(plan, 39, keyDip) == Approx(10.1).margin(0.2));
    for (const Cell& cell : plan.becomesStale)
        CHECK(cell.dimension != letOff);
}

TEST_CASE("S2: filed hammers: the rail goes in by f over k, then capstans, then let-off") {
    Piano piano = upright();
    piano.ratio = {5.0, 5.0};
    Scene scene(piano, "upright");
    for (int n = 1; n <= 88; ++n) {
        scene.read(n, blow, 48);
        scene.read(n, letOff, 5);
        scene.read(n, checking, 17.5);
        scene.read(n, keyDip, colourOf({n}, piano) == KeyColour::natural ? 10.0 : 9.4);
        scene.read(n, lostMotion, 0.4);
    }
    PlanOptions options;
    options.accepted["hammers-filed"] = "restore-blow";
    const Plan restored = scene.plan(options);
    const Step* rail = commonOf(restored, operation::restRailShim, 30);
    REQUIRE(rail);
    CHECK(*rail->amount == Approx(1.56).margin(0.16)); // within a tenth of f/k; f is estimated from blow and let-off
    const Step* capstan = stepOf(restored, operation::capstanTurn, 30);
    const Step* out = stepOf(restored, operation::letOffTurn, 30);
    REQUIRE(capstan);
    REQUIRE(out);
    CHECK(capstan->direction == Direction::anticlockwise);
    CHECK(out->direction == Direction::out);
    CHECK(rail->order < capstan->order);
    CHECK(capstan->order < out->order);

    options.accepted["hammers-filed"] = "keep-blow";
    const Plan kept = scene.plan(options);
    CHECK(count(kept, operation::restRailShim) == 0);
    CHECK(count(kept, operation::letOffTurn) == 88);
    for (const Step& step : kept.steps)
        if (step.operation == operation::letOffTurn) CHECK(step.direction == Direction::out);
}

TEST_CASE("S5: in a damp month the hammers off their rail are waited for, or turned down on request") {
    Scene scene(upright(), "upright");
    scene.pass().humidity = 71;
    for (int n = 1; n <= 88; ++n) {
        if (n % 5 < 2 && n <= 85)
            scene.read(n, lostMotion, -0.6);
        else
            scene.read(n, lostMotion, 0.2);
    }
    CHECK(count(scene.plan(), operation::capstanTurn) == 0);
    PlanOptions urgent;
    urgent.accepted["moved-wood"] = "turn-now";
    for (int n = 1; n <= 88; ++n) {
        Override later;
        later.cell = {{n}, lostMotion};
        later.zone = {0, fromTrade(0.2, Kind::length), fromTrade(0.4, Kind::length)};
        later.reason = "damp month";
        scene.record.overrides.push_back(later);
    }
    const Plan plan = scene.plan(urgent);
    const Step* down = stepOf(plan, operation::capstanTurn, 11); // a natural
    REQUIRE(down);
    CHECK(down->direction == Direction::clockwise);
    CHECK(*down->atPart == Approx(-0.43).margin(0.01));
}

TEST_CASE("one long blow on a vertical is never a matter of its capstan") {
    Scene scene(upright(), "upright");
    for (int n = 1; n <= 88; ++n) {
        // 49.0: 0.8 mm of cloth brings it in; 50.5 would want 2 mm, which is looked at instead
        scene.read(n, blow, n == 30 ? 49.0 : n == 40 ? 50.5 : n == 50 ? 42.0 : 46.0);
        scene.read(n, lostMotion, 0.15);
        scene.read(n, letOff, 3.0);
    }
    const Plan plan = scene.plan();
    CHECK(stepOf(plan, operation::railClothShim, 30));
    CHECK(stepOf(plan, operation::inspect, 40));
    CHECK(stepOf(plan, operation::inspect, 50));
    for (const Step& step : plan.steps) {
        const bool ofBlow = std::find(step.serves.begin(), step.serves.end(), blow) != step.serves.end();
        if (ofBlow) CHECK(step.operation != operation::capstanTurn);
        CHECK((step.note && (step.note->value == 30 || step.note->value == 40 || step.note->value == 50 ||
                             step.operation == operation::letOffTurn)));
    }
}
