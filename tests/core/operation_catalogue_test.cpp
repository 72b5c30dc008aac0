#include "core/operation/amount.h"
#include "core/operation/operation.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace hammerline;

TEST_CASE("every operation is found by its key and no two share one") {
    std::set<std::string_view> keys;
    for (const Operation& operation : operations()) {
        CHECK(keys.insert(key(operation.id)).second);
        REQUIRE(findOperation(key(operation.id)).has_value());
        CHECK(*findOperation(key(operation.id)) == operation.id);
    }
    const auto refused = findOperation("let-off");
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == RefusalCode::unknownOperation);
    CHECK(refused.error().offending == "let-off");
}

TEST_CASE("in every order of work each need stands before what needs it, and nothing is lost") {
    for (const ActionKind kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand}) {
        const auto sorted = sortedWork(kind);
        REQUIRE(sorted.size() == orderOfWork(kind).size());
        const auto place = [&](std::string_view id) { return std::find(sorted.begin(), sorted.end(), id); };
        for (const WorkStep& step : orderOfWork(kind))
            for (const std::string_view need : step.needs) {
                INFO(step.id << " needs " << need);
                REQUIRE(place(need) != sorted.end());
                CHECK(place(need) < place(step.id));
            }
    }
}

TEST_CASE("every operation that an action has stands in its order of work") {
    for (const ActionKind kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand}) {
        Piano piano = *makePiano(kind);
        if (kind != ActionKind::grand) piano.player = PlayerStack::above;
        const auto size = sortedWork(kind).size();
        for (const Operation& operation : operations())
            if (applies(operation.id, piano)) {
                INFO(key(operation.id) << " " << key(kind));
                CHECK(placeInWork(operation.id, kind) < size);
            }
    }
}

TEST_CASE("a drop action's keys are unhooked before a front punching") {
    const auto access = [](ActionKind kind) {
        for (const WorkStep& step : orderOfWork(kind))
            if (step.id == "U12") return step.access;
        return Access::bench;
    };
    CHECK(access(ActionKind::upright) == Access::oneKey);
    CHECK(access(ActionKind::drop) == Access::keysOff);
}

TEST_CASE("capstans of a player piano are reached with the stack out") {
    Piano piano = *makePiano(ActionKind::upright);
    CHECK(accessOf(operation::capstanTurn, piano) == Access::actionIn);
    piano.player = PlayerStack::above;
    CHECK(accessOf(operation::capstanTurn, piano) == Access::stackOut);
    CHECK(minutesToReach(Access::stackOut, piano)[0] == 60);
}

TEST_CASE("caps and first trials are those of bench-practice 2.5") {
    const Piano upright = *makePiano(ActionKind::upright), grand = *makePiano(ActionKind::grand);
    CHECK(capOf(operation::letOffTurn, upright) == 0.25);
    CHECK(firstTrialOf(operation::letOffTurn, upright) == 0.125);
    CHECK(capOf(operation::capstanTurn, upright) == 0.5);
    CHECK(firstTrialOf(operation::capstanTurn, upright) == 0.25);
    CHECK(capOf(operation::capstanTurn, grand) == 0.125);
    CHECK(firstTrialOf(operation::capstanTurn, grand) == 0.125);
    CHECK(capOf(operation::restRailShim, upright) == 2);
    for (const Operation& operation : operations())
        if (operation.capPerGo > 0) CHECK(operation.firstTrial <= operation.capPerGo);
}

TEST_CASE("a raised key makes stale what it moves, and not the let-off") {
    // scenario S1: "stale H D M A K S and sharp height; O not stale"
    using namespace dimension;
    const Piano upright = *makePiano(ActionKind::upright), grand = *makePiano(ActionKind::grand);
    for (const DimensionId d : {keyHeight, keyDip, lostMotion, aftertouch, checking, damperStart, sharpHeight})
        CHECK(disturbs(operation::balanceRailShim, d, upright));
    CHECK_FALSE(disturbs(operation::balanceRailShim, letOff, upright));
    CHECK_FALSE(disturbs(operation::balanceRailShim, blow, upright));
    CHECK(disturbs(operation::balanceRailShim, blow, grand));
    CHECK_FALSE(disturbs(operation::capstanTurn, blow, upright));
    CHECK(disturbs(operation::capstanTurn, blow, grand));
    CHECK(disturbs(operation::restRailShim, blow, upright));
    CHECK_FALSE(disturbs(operation::letOffTurn, keyDip, upright));
}

TEST_CASE("an amount really done is turns for a screw and a length for a punching, however it is typed") {
    using Catch::Matchers::WithinAbs;
    // arithmetic of fractions, no source needed
    const std::vector<std::pair<std::string_view, double>> turns{
        {"1/8", 0.125},  {"3/4", 0.75},      {"0.25", 0.25},  {"0,25", 0.25},      {"1 1/2", 1.5},   {"2", 2.0},
        {"-1/4", -0.25}, {"1/3", 1.0 / 3.0}, {"\u00BD", 0.5}, {"1/8 turn", 0.125}, {"1/16", 0.0625}, {"2 turns", 2.0}};
    for (const auto& [typed, expected] : turns) {
        INFO(typed);
        const auto read = parseAmount(typed, AmountUnit::turn);
        REQUIRE(read.has_value());
        CHECK_THAT(*read, WithinAbs(expected, 1e-7));
    }
    for (const std::string_view typed : {"1/8 mm", "0.5 in", "3 mm", "5 thou"}) {
        INFO(typed);
        const auto read = parseAmount(typed, AmountUnit::turn);
        REQUIRE_FALSE(read.has_value());
        CHECK(read.error().code == RefusalCode::wrongUnit);
    }
    for (const std::string_view typed : {"<1/8", "1/8..1/4", "a bit", "", "gap 1"})
        CHECK_FALSE(parseAmount(typed, AmountUnit::turn).has_value());
    // a length is a length as everywhere else: a bare fraction is inches, 1/16 in = 1.5875 mm (25.4 mm to the inch)
    const std::vector<std::pair<std::string_view, double>> lengths{{"0.4", 0.4},       {"0,4", 0.4},   {"1/16", 1.5875},
                                                                   {".016in", 0.4064}, {"-0.2", -0.2}, {"1 mm", 1.0}};
    for (const auto& [typed, expected] : lengths) {
        INFO(typed);
        const auto read = parseAmount(typed, AmountUnit::mm);
        REQUIRE(read.has_value());
        CHECK_THAT(*read, WithinAbs(expected, 1e-9));
    }
    CHECK_FALSE(parseAmount("1/8 turn", AmountUnit::mm).has_value());
}
