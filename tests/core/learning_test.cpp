// What is learned is not biased by the readings that the amounts came from, and sections answer for themselves
// (computation 8). Simulations with a fixed seed; the truth is known because it was put in.
#include "core/history/learning.h"
#include "core/plan/plan_in_force.h"
#include "tests/core/scene.h"

#include <random>

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;
using Catch::Matchers::WithinAbs;

namespace {

constexpr std::array kRatio = {4.9, 5.3};
constexpr double kGuess = 6; // mm of let-off a turn, the first guess (bench-practice 2.5)
constexpr double kAim = 2.9, kCap = 0.25;

enum class Chosen : std::uint8_t { byPlan, byLearnedPlan, byHand, byHandAtAStep, trial };

std::vector<Response> learnedOf(const PianoRecord& record) {
    std::vector<Response> out;
    for (const Response& each : learnedResponses(record, kRatio))
        if (each.operation == operation::letOffTurn && each.keys.value_or(KeyColour::natural) == KeyColour::natural)
            out.push_back(each);
    return out;
}

struct Round {
    double u;      // of one reading, mm
    double answer; // over the first guess
    Chosen chosen;
    int notes;
};

/// One piano: let-off read with the gauge's error, turned, and read again. Answer over first guess, as it is learned.
double learnOnce(const Round& round, std::mt19937& chance) {
    Piano piano = upright();
    piano.gauges["let-off"] = round.u > 0.3 ? "rule" : "simple"; // 0.4, 0.25
    Scene scene(piano, "upright");
    std::normal_distribution<double> noise(0, round.u), where(3.4, 0.4);
    std::uniform_real_distribution<double> hand(-kCap, kCap);
    std::vector<double> after;
    Plan plan;
    for (int i = 0; i < round.notes; ++i) {
        const int note = 10 + i;
        const double truly = where(chance), read = truly + noise(chance);
        scene.read(note, letOff, read);
        const bool learned = round.chosen == Chosen::byLearnedPlan; // it believed 0.7 of the first guess
        const double believed = learned ? 0.7 * kGuess : kGuess;
        const double reckoned = std::clamp((kAim - read) / believed, -kCap, kCap); // a go of the plan
        const double turned = round.chosen == Chosen::byPlan || learned ? reckoned
                              : round.chosen == Chosen::trial           ? -0.125
                                                                        : hand(chance);
        Done& done = scene.did(operation::letOffTurn, note, turned);
        if (round.chosen != Chosen::byHand) done.step = "let-off-turn:" + std::to_string(note);
        if (learned ||
            round.chosen == Chosen::byHandAtAStep) { // by hand: another amount was typed than the frozen plan's
            done.plan = "frozen";
            Step step;
            step.id = done.step;
            step.operation = operation::letOffTurn;
            step.aimDimension = letOff;
            step.amount = step.go = reckoned;
            plan.steps.push_back(step);
        }
        after.push_back(truly + round.answer * kGuess * turned);
    }
    if (round.chosen == Chosen::byLearnedPlan) {
        plan.responses.emplace_back();
        plan.responses.back().operation = operation::letOffTurn;
        plan.responses.back().effects = {{letOff, 0.7 * kGuess, 0.1}};
    }
    if (!plan.steps.empty()) scene.record.plans.push_back(freeze(plan, "frozen"));
    scene.nextPass();
    for (int i = 0; i < round.notes; ++i)
        scene.read(10 + i, letOff, after[static_cast<std::size_t>(i)] + noise(chance));
    return learnedOf(scene.record).front().effects.front().perUnit / kGuess;
}

struct Mean {
    double mean, error; // standard error of the mean
};
Mean meanOf(const Round& round) {
    constexpr int kPianos = 40;
    std::mt19937 chance(20261127);
    double sum = 0, squares = 0;
    for (int i = 0; i < kPianos; ++i) {
        const double learned = learnOnce(round, chance);
        sum += learned;
        squares += learned * learned;
    }
    const double mean = sum / kPianos;
    return {mean, std::sqrt((squares / kPianos - mean * mean) / kPianos)};
}

} // namespace

TEST_CASE("what is learned is unbiased, whether the plan reckoned the amounts from the readings or a hand chose them") {
    // The slope without correction is too large by V P(below the cap)/(f mean e^2): about 0.26 at 0.4 mm, 0.16 at 0.25.
    for (const double u : {0.4, 0.25})
        for (const Chosen chosen :
             {Chosen::byPlan, Chosen::byLearnedPlan, Chosen::byHand, Chosen::byHandAtAStep, Chosen::trial}) {
            const Mean learned = meanOf({u, 0.8, chosen, 40});
            INFO("u " << u << ", chosen " << static_cast<int>(chosen) << ": " << learned.mean << " +- "
                      << learned.error);
            // The first guess (1 +- 0.5) pulls by up to 0.02, outliers that are left out by as little.
            CHECK_THAT(learned.mean, WithinAbs(0.8, 3 * learned.error + 0.02));
        }
}

TEST_CASE("the correction is there at all: amounts of the plan, taken for a hand's, learn too much") {
    const Mean learned = meanOf({0.4, 0.8, Chosen::byPlan, 40});
    std::mt19937 chance(7);
    // pianos alike, the plain slope: what the test above would see without the correction
    double sum = 0;
    for (int i = 0; i < 300; ++i) {
        std::normal_distribution<double> noise(0, 0.4), where(3.4, 0.4);
        double cross = 0, squares = 0;
        for (int n = 0; n < 40; ++n) {
            const double truly = where(chance), read = truly + noise(chance);
            const double e = std::clamp(kAim - read, -kCap * kGuess, kCap * kGuess);
            cross += e * (truly + 0.8 * e + noise(chance) - read);
            squares += e * e;
        }
        sum += cross / squares;
    }
    CHECK(sum / 300 > 0.95);
    CHECK(learned.mean < 0.9);
}

namespace {

/// Trials of an eighth in every section; the treble answers otherwise.
PianoRecord sections(double bass, double treble, int inTreble) {
    Scene scene(upright(), "upright");
    std::mt19937 chance(3);
    std::normal_distribution<double> noise(0, 0.1);
    std::vector<std::pair<int, double>> notes;
    for (int n = 4; n <= 64; n += 5)
        notes.emplace_back(n, bass);
    for (int i = 0; i < inTreble; ++i)
        notes.emplace_back(72 + i, treble);
    for (const auto& [note, perTurn] : notes) {
        scene.read(note, letOff, 4.5);
        scene.did(operation::letOffTurn, note, -0.125);
    }
    scene.nextPass();
    for (const auto& [note, perTurn] : notes)
        scene.read(note, letOff, 4.5 - 0.125 * perTurn + noise(chance));
    return scene.record;
}

} // namespace

TEST_CASE("a section with eight pairs that answers otherwise has its own answer, else the piano's holds") {
    const auto apart = learnedOf(sections(6, 10, 12));
    REQUIRE(apart.size() == 2);
    CHECK_FALSE(apart[0].section);
    REQUIRE(apart[1].section);
    CHECK(*apart[1].section == 3); // 71 to 88
    CHECK(apart[1].pairs == 12);
    CHECK_THAT(apart[1].effects.front().perUnit, WithinAbs(10, 1.5));
    CHECK(learnedOf(sections(6, 10, 7)).size() == 1); // too few
    CHECK(learnedOf(sections(6, 6, 12)).size() == 1); // no difference
    // the plan turns by the section's own
    PianoRecord record = sections(6, 10, 12);
    for (const int note : {50, 80}) {
        Reading far;
        far.count = fromMm(note == 50 ? 4.4 : 3.6).nm; // 1.5 over each aim
        record.passes[1].cells[{{note}, letOff}].trials = {far};
    }
    const Plan plan = *makePlan(record, *builtInSheet("upright"), 2, {});
    const Step* middle = stepOf(plan, operation::letOffTurn, 50);
    const Step* treble = stepOf(plan, operation::letOffTurn, 80);
    REQUIRE(middle);
    REQUIRE(treble);
    CHECK(std::abs(*treble->amount) < std::abs(*middle->amount));
}
