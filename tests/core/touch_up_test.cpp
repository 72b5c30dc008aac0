// Touch-up of a note that stands off its neighbours, and the look that tells whether a hammer lies on its rail.
#include "core/history/learning.h"
#include "core/plan/bench.h"
#include "tests/core/scene.h"

#include <cmath>

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;

namespace {

constexpr std::array kRatio = {4.9, 5.3};

CellState stateAt(const Scene& scene, int note, DimensionId id) {
    return stateOf(scene.record, scene.record.passes.back().number, firstResponses(scene.record.piano, kRatio), kRatio)
        .at({{note}, id});
}

const Step* stepAt(const Plan& plan, int note, OperationId operation) {
    for (const Step& step : plan.steps)
        if (step.note && step.note->value == note && step.operation == operation) return &step;
    return nullptr;
}

std::string_view whyRead(const Plan& plan, Cell cell) {
    for (const ToRead& each : plan.readNext)
        if (each.cell == cell) return each.why;
    return {};
}

/// Every let-off so far above the low limit of its zone, but note 40 farther by `odd`; each cell read so often.
Scene letOffs(double above, double odd, int passes) {
    Scene scene(upright(), "upright");
    const Zones zones = scene.zones();
    for (int pass = 0; pass < passes; ++pass) {
        if (pass > 0) scene.nextPass();
        for (int n = 1; n <= 88; ++n)
            scene.read(n, letOff, toTrade(*zones.at({{n}, letOff})->low, Kind::length) + above + (n == 40 ? odd : 0));
    }
    return scene;
}

struct LetOff {
    double low, high, L;
};
LetOff atForty() {
    const Zones zones = Scene(upright(), "upright").zones();
    const auto& zone = zones.at({{40}, letOff});
    return {toTrade(*zone->low, Kind::length), toTrade(*zone->high, Kind::length),
            toTrade(*zones.step(letOff), Kind::length)};
}

} // namespace

TEST_CASE("a let-off inside its zone but off its neighbours is turned to them, once two readings say so") {
    const auto [low, high, L] = atForty();
    const double odd = 2.3 * L;
    REQUIRE(low + 0.2 + odd < high);
    const Plan twice = letOffs(0.2, odd, 2).plan();
    REQUIRE(twice.steps.size() == 1);
    const Step* step = stepAt(twice, 40, operation::letOffTurn);
    REQUIRE(step);
    REQUIRE(step->aim);
    CHECK(std::abs(*step->aim - (low + 0.2)) <= 0.7 * L + 1e-9);
    // One reading may be the reading: it is asked for again.
    const Plan once = letOffs(0.2, odd, 1).plan();
    CHECK(once.steps.empty());
    CHECK_FALSE(whyRead(once, {{40}, letOff}).empty());
    // Half an evenness limit is no unevenness, however often it is read.
    CHECK(letOffs(0.2, L / 2, 3).plan().steps.empty());
}

TEST_CASE("a note is brought to its neighbours no farther than its zone goes") {
    const auto [low, high, L] = atForty();
    const Plan plan = letOffs(0.1, 2.4 * L, 2).plan(); // the line itself runs near the limit
    const Step* step = stepAt(plan, 40, operation::letOffTurn);
    REQUIRE(step);
    CHECK(*step->aim >= low - 1e-9);
    CHECK(*step->aim <= low + 0.1 + 0.7 * L + 1e-9);
}

// The normal of a reading of 0.1 cut at -0.03, its mean and deviation by summing over a fine grid.
TEST_CASE("a hammer seen on its rail has no lost motion below what a tug feels: against a sum over a grid") {
    Scene scene(upright(), "upright");
    scene.read(40, lostMotion, 0.1);
    scene.nextPass();
    scene.word(40, lostMotion, word::ok);
    const double u = toTrade(uncertaintyOf(lostMotion, scene.record.piano), Kind::length);
    const double variance = u * u;
    double weight = 0, mean = 0, squares = 0;
    for (double m = -0.03; m < 3; m += 1e-5) {
        const double p = std::exp(-(m - 0.1) * (m - 0.1) / (2 * variance));
        weight += p;
        mean += p * m;
        squares += p * m * m;
    }
    mean /= weight;
    const CellState state = stateAt(scene, 40, lostMotion);
    CHECK(state.value == Approx(mean).epsilon(1e-3));
    CHECK(state.sd == Approx(std::sqrt(squares / weight - mean * mean)).epsilon(1e-3));
}

TEST_CASE("where only hanging is in doubt the plan asks for a look, and the look settles it") {
    Scene scene(upright(), "upright");
    scene.readAll(lostMotion, 0.3);
    scene.did(operation::capstanTurn, 40, 0.1); // some 0.2 less: 0.1, by a first guess that may be 40 % off
    Plan plan = scene.plan();
    REQUIRE(whyRead(plan, {{40}, lostMotion}) == kLookAtRail);
    for (const ToRead& each : plan.readNext)
        if (each.why == kLookAtRail) CHECK(minutesOf(each) < 0.1);
    Scene hangs = scene;
    scene.nextPass();
    scene.word(40, lostMotion, word::ok);
    CHECK(whyRead(scene.plan(), {{40}, lostMotion}).empty());
    CHECK_FALSE(stepAt(scene.plan(), 40, operation::capstanTurn));
    hangs.nextPass();
    hangs.word(40, lostMotion, word::offRail);
    CHECK(stepAt(hangs.plan(), 40, operation::capstanTurn));
}
