// The closed loop on virtual pianos (computation 13): measure, plan, work with human error, read what the plan asks
// for. The model shares no formula with the planner. The whole yardstick over 200 pianos is tests/bench.sh; here every
// run of the tests goes round often enough to notice when the plan stops converging.
#include "tests/virtual_action/players.h"

#include <catch2/catch.hpp>

#include <set>

using namespace hammerline;
using namespace virtual_action;

namespace {

struct Tally {
    int finished = 0, explained = 0, passes = 0;
};

Tally loop(ActionKind kind, Gauge gauge, int pianos) {
    Piano piano = *makePiano(kind);
    for (const DimensionId id : yardstickDimensions())
        piano.gauges[std::string(key(id))] = gauge == Gauge::good ? "good" : "simple";
    const SpecSheet sheet = *builtInSheet(defaultSheet(kind));
    Tally tally;
    for (int seed = 1; seed <= pianos; ++seed) {
        Action action(piano, sheet, {}, static_cast<std::uint64_t>(seed));
        Workshop workshop(action, {gauge}, static_cast<std::uint64_t>(seed));
        const Played played = playProgram(workshop, sheet);
        INFO("piano " << seed);
        CHECK(played.minutes.all() < 24 * 60);
        tally.finished += played.finished;
        tally.explained += !played.finished && !played.conflicts.empty();
        tally.passes += played.passes;
    }
    return tally;
}

} // namespace

TEST_CASE("worn uprights are brought in with simple and with good tools") {
    constexpr int kPianos = 30;
    const Tally simple = loop(ActionKind::upright, Gauge::simple, kPianos);
    CHECK(simple.finished + simple.explained >= kPianos - 1);
    CHECK(simple.finished >= kPianos * 9 / 10);
    const Tally good = loop(ActionKind::upright, Gauge::good, kPianos);
    CHECK(good.finished >= kPianos - 1);
    CHECK(good.passes <= simple.passes);
}

TEST_CASE("worn grands are brought in by their own operations") {
    constexpr int kPianos = 10;
    CHECK(loop(ActionKind::grand, Gauge::good, kPianos).finished >= kPianos - 1);
}

TEST_CASE("the program's player takes fewer minutes than one that goes by the handbook") {
    const SpecSheet sheet = *builtInSheet("upright");
    const Piano piano = *makePiano(ActionKind::upright);
    int quicker = 0;
    constexpr int kPianos = 6;
    for (std::uint64_t seed = 101; seed < 101 + kPianos; ++seed) {
        Action one(piano, sheet, {}, seed), other(piano, sheet, {}, seed);
        Workshop program(one, {}, seed), handbook(other, {}, seed);
        quicker += playProgram(program, sheet).minutes.all() < 0.9 * playGoodHandbook(handbook, sheet).minutes.all();
    }
    CHECK(quicker >= kPianos - 1);
}

TEST_CASE("the handbook players are good technicians: with simple gauges they finish, or they would flatter us") {
    Piano piano = *makePiano(ActionKind::upright);
    for (const DimensionId id : yardstickDimensions())
        piano.gauges[std::string(key(id))] = "simple";
    const SpecSheet sheet = *builtInSheet("upright");
    constexpr int kPianos = 20;
    int good = 0, economical = 0;
    for (std::uint64_t seed = 301; seed < 301 + kPianos; ++seed) {
        Action one(piano, sheet, {}, seed), other(piano, sheet, {}, seed);
        Workshop first(one, {}, seed), second(other, {}, seed);
        good += playGoodHandbook(first, sheet).finished;
        economical += playEconomicalHandbook(second, sheet).finished;
    }
    CHECK(good >= kPianos * 85 / 100); // 0.94 of 200
    CHECK(economical >= kPianos * 65 / 100);
}
