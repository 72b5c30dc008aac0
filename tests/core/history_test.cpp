// What work makes stale, what it teaches, and what is known of a cell afterwards (computation 7, 8).
#include "core/history/adjusted.h"
#include "core/history/learning.h"
#include "tests/core/reference.h"
#include "tests/core/scene.h"

#include <cmath>

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;

namespace {

constexpr std::array kRatio = {4.9, 5.3};

bool holds(const std::vector<Cell>& cells, int note, DimensionId dimension) {
    return std::find(cells.begin(), cells.end(), Cell{{note}, dimension}) != cells.end();
}

/// The first answer of the operation for naturals.
Response answerOf(const PianoRecord& record, OperationId operation) {
    for (const Response& response : learnedResponses(record, kRatio))
        if (response.operation == operation && response.keys.value_or(KeyColour::natural) == KeyColour::natural)
            return response;
    FAIL("no response");
    return {};
}

/// Let-off read before and after turns of the screw, one note a pair, from note 20 up.
Scene letOffTrials(const std::vector<double>& turns, const std::vector<double>& changes, double before = 4.5) {
    Scene scene(upright(), "upright");
    for (std::size_t i = 0; i < turns.size(); ++i) {
        const int note = 20 + static_cast<int>(i);
        scene.read(note, letOff, before);
        scene.did(operation::letOffTurn, note, turns[i]);
    }
    scene.nextPass();
    for (std::size_t i = 0; i < turns.size(); ++i)
        scene.read(20 + static_cast<int>(i), letOff, before + changes[i]);
    return scene;
}

} // namespace

TEST_CASE("a reading is stale once work that disturbs its dimension followed at its note") {
    Scene scene(upright(), "upright");
    for (const int note : {40, 42}) // naturals
        for (const DimensionId id : {keyHeight, keyDip, lostMotion, blow, letOff, aftertouch, checking, damperStart})
            scene.read(note, id, toTrade(scene.zones().at({{note}, id})->nominal, row(id).kind));
    CHECK(staleCells(scene.record, scene.pass()).empty());
    scene.did(operation::capstanTurn, 40, 0.25);
    const auto stale = staleCells(scene.record, scene.pass());
    for (const DimensionId id : {lostMotion, aftertouch, checking})
        CHECK(holds(stale, 40, id));
    for (const DimensionId id : {keyHeight, keyDip, blow, letOff})
        CHECK_FALSE(holds(stale, 40, id)); // situation 34: list post of February 2000
    for (const Cell& cell : stale)
        CHECK(cell.note.value == 40);
}

TEST_CASE("what is read after the work is fresh, and work of the pass before leaves it so") {
    Scene scene(upright(), "upright");
    scene.read(40, letOff, 4.0);
    scene.did(operation::letOffTurn, 40, -0.125);
    CHECK(holds(staleCells(scene.record, scene.pass()), 40, letOff));
    scene.nextPass();
    scene.read(40, letOff, 3.2);
    CHECK(staleCells(scene.record, scene.pass()).empty());
    CHECK(holds(staleCells(scene.record, scene.record.passes[0]), 40, letOff));
}

TEST_CASE("what was adjusted is walked over until a later pass has read it") {
    Scene scene(upright(), "upright");
    for (const int note : {40, 41, 42})
        scene.read(note, letOff, 4.0);
    CHECK(adjustedCells(scene.record, 1).empty());
    scene.did(operation::letOffTurn, 40, -0.125);
    scene.did(operation::letOffTurn, 42, -0.125);
    const std::vector<Cell> both{{{40}, letOff}, {{42}, letOff}};
    CHECK(adjustedCells(scene.record, 1) == both);
    scene.nextPass();
    CHECK(adjustedCells(scene.record, 2) == both);
    scene.read(40, letOff, 3.2);
    CHECK(adjustedCells(scene.record, 2) == both); // what is walked stays the same while it is walked
    scene.nextPass();
    CHECK(adjustedCells(scene.record, 3) == std::vector<Cell>{{{42}, letOff}});
}

TEST_CASE("sample notes stand in every section, naturals and sharps") {
    for (const int notes : {44, 85, 88}) {
        const auto made = makePiano(ActionKind::upright, notes, 21);
        REQUIRE(made);
        const auto samples = sampleNotes(*made);
        CAPTURE(notes);
        CHECK(std::is_sorted(samples.begin(), samples.end()));
        for (const Section& section : sectionsOf(*made)) {
            const auto inside = [&](KeyColour colour) {
                return std::count_if(samples.begin(), samples.end(), [&](NoteNumber n) {
                    return section.range.contains(n) && colourOf(n, *made) == colour;
                });
            };
            CHECK(inside(KeyColour::natural) == 2);
            CHECK(inside(KeyColour::sharp) == 1);
        }
    }
    // The shortest compass has sections of a few notes: each has one at least.
    const auto model = makePiano(ActionKind::upright, 20, 21);
    REQUIRE(model);
    const auto few = sampleNotes(*model);
    for (const Section& section : sectionsOf(*model))
        CHECK(std::any_of(few.begin(), few.end(), [&](NoteNumber n) { return section.range.contains(n); }));
    CHECK(sampleNotes(upright()).size() == 12); // 8 to 12 on a whole keyboard (common practice, no source)
}

TEST_CASE("within one pass the order of the acts decides what is stale") {
    Scene scene(upright(), "upright");
    scene.read(40, letOff, 4.0);
    scene.read(41, letOff, 3.2);
    scene.pass().cells[{{40}, letOff}].trials[0].order = 1;
    for (const int note : {40, 41})
        scene.did(operation::letOffTurn, note, -0.125).order = 2;
    scene.pass().cells[{{41}, letOff}].trials[0].order = 3;
    const auto stale = staleCells(scene.record, scene.pass());
    CHECK(holds(stale, 40, letOff));
    CHECK_FALSE(holds(stale, 41, letOff));
}

TEST_CASE("a mended part makes the readings stale that stood on it") {
    Piano piano = upright();
    piano.butt = Butt::brassRail;
    Scene scene(piano, "upright");
    for (const int note : {40, 42}) {
        scene.read(note, blow, 46);
        scene.read(note, keyDip, 10.2);
        for (auto& [cell, measured] : scene.pass().cells)
            measured.trials[0].order = 1;
    }
    const auto mended = parseFindingStates("40 butt-plate mended", scene.record.piano);
    REQUIRE(mended);
    scene.record.findings = *mended;
    for (Finding& finding : scene.record.findings)
        finding.order = 2;
    const auto stale = staleCells(scene.record, scene.pass());
    CHECK(holds(stale, 40, blow)); // bench-practice 3, row 5: B O K
    CHECK_FALSE(holds(stale, 40, keyDip));
    CHECK_FALSE(holds(stale, 42, blow));
}

TEST_CASE("a response is learned by sign and amount: twelve trials against the regression of R") {
    // origin_regression_turns.json: R 4.2.2 lm(dmm ~ turns - 1), slope 0.40414 a turn; here mm of lost motion by a
    // drop button whose first guess, 1.2 +- 0.6 down, is far off: the lesson stands alone.
    const auto want = reference::json("origin_regression_turns.json");
    const std::vector<double> turns = want["turns"], changes = want["dmm"];
    Piano piano = *makePiano(ActionKind::drop);
    piano.gauges["lost-motion"] = "good";
    Scene scene(piano, "drop");
    std::vector<int> naturals;
    for (int n = 20; naturals.size() < turns.size(); ++n)
        if (scene.isNatural(n)) naturals.push_back(n);
    for (std::size_t i = 0; i < turns.size(); ++i) {
        scene.read(naturals[i], lostMotion, 1.0);
        scene.did(operation::capstanTurn, naturals[i], turns[i]);
    }
    scene.nextPass();
    for (std::size_t i = 0; i < turns.size(); ++i)
        scene.read(naturals[i], lostMotion, 1.0 + changes[i]);
    const Response learned = answerOf(scene.record, operation::capstanTurn);
    CHECK(learned.learned);
    CHECK(learned.pairs == 12);
    // A hand chose the amounts: they share no error with the readings, and the answer is R's own slope.
    CHECK(learned.effects.front().perUnit == Approx(want["slope"].get<double>()).epsilon(1e-6));
    CHECK(learned.effects.front().perUnit > 0); // the sign that was seen, not the one of the text
    CHECK(learned.low95 < learned.effects.front().perUnit);
    CHECK(learned.high95 > learned.effects.front().perUnit);
}

TEST_CASE("a screw that answers the other way round turns the word, and the step says so") {
    Scene scene(upright(), "upright");
    scene.readAll(letOff, 4.0); // too far: zone 1.8 to 3.2
    double guess = 0;
    for (const Response& r : firstResponses(scene.record.piano, kRatio))
        if (r.operation == operation::letOffTurn) guess = r.effects.front().perUnit;
    REQUIRE(guess != 0);
    const auto tryAgainst = [&](const std::array<int, 3>& trials, int inPass) {
        for (const int note : trials)
            scene.did(operation::letOffTurn, note, 0.125).order = 1000 * inPass;
        scene.nextPass();
        scene.readAll(letOff, 4.0);
        for (const int note : trials)
            scene.read(note, letOff, 4.0 - guess * 0.125); // against the guess
    };
    const std::array first = {28, 40, 52};
    tryAgainst(first, 1);
    // One set turns no direction: three other notes are tried.
    const Plan doubting = scene.plan();
    CHECK_FALSE(stepOf(doubting, operation::letOffTurn, 60)->opposite);
    CHECK_FALSE(stepOf(doubting, operation::letOffTurn, 60)->amount);
    REQUIRE(doubting.trials.size() == 1);
    for (const NoteNumber note : doubting.trials.front().notes)
        CHECK(std::find(first.begin(), first.end(), note.value) == first.end());
    tryAgainst({30, 43, 62}, 2);
    for (const int note : first)
        scene.read(note, letOff, 4.0 - guess * 0.125);
    const Plan plan = scene.plan();
    const Step* step = stepOf(plan, operation::letOffTurn, 60);
    REQUIRE(step);
    CHECK(step->opposite);
    const Direction usual = directionOf(operation::letOffTurn, -1 / guess, scene.record.piano); // nearer, by the text
    CHECK(step->direction == otherWay(operation::letOffTurn, usual, scene.record.piano));
    CHECK(otherWay(operation::letOffTurn, step->direction, scene.record.piano) == usual);
}

TEST_CASE("trials of one fixed amount teach their plain mean; the interval knows the gauge") {
    // By hand: three trials of -1/8: changes -0.7, -0.8, -0.7 (S3); mean 0.7333/0.125 = 5.8667 a turn. The first guess
    // of 6 +- 3 has the weight 1/0.25; the lesson's sd is the gauge's, sqrt(2 u^2/sum a^2), which is more than the
    // notes scatter.
    const Scene scene = letOffTrials({-0.125, -0.125, -0.125}, {-0.7, -0.8, -0.7});
    const Response learned = answerOf(scene.record, operation::letOffTurn);
    CHECK(learned.pairs == 3);
    const double u = toTrade(uncertaintyOf(letOff, scene.record.piano), Kind::length);
    const double mean = 2.2 / 3 / 0.75; // answer over first guess, 6 mm a turn
    const double sd = std::hypot(std::sqrt(2 * u * u / (3 * 0.75 * 0.75)), 0.02 * mean); // 2 % of the pitch
    const double own = 1 / (sd * sd), prior = 1 / std::pow(0.5, 2);
    CHECK(learned.effects.front().perUnit == Approx(6 * (prior + own * mean) / (prior + own)).epsilon(1e-6));
    CHECK(learned.effects.front().sd == Approx(6 / std::sqrt(prior + own)).epsilon(1e-6));
    // Student's t with pairs + 1 degrees of freedom (4: 2.776445, student_t_quantiles.csv)
    CHECK(learned.high95 - learned.effects.front().perUnit ==
          Approx(2.7764451 * learned.effects.front().sd).epsilon(1e-6));
    CHECK(learned.effects.front().perUnit - learned.low95 ==
          Approx(2.7764451 * learned.effects.front().sd).epsilon(1e-6));
}

TEST_CASE("the more trials agree, the narrower the interval, and the true answer lies in it") {
    double last = 1e9;
    for (const std::size_t n : {3U, 6U, 12U, 24U}) {
        std::vector<double> changes;
        for (std::size_t i = 0; i < n; ++i)
            changes.push_back(-0.125 * 7.2 + (i % 2 ? 0.1 : -0.1)); // 7.2 a turn
        const Scene scene = letOffTrials(std::vector<double>(n, -0.125), changes);
        const Response learned = answerOf(scene.record, operation::letOffTurn);
        CHECK(learned.high95 - learned.low95 < last);
        last = learned.high95 - learned.low95;
        CHECK(learned.low95 < 7.2);
        CHECK(learned.high95 > 7.2);
    }
    CHECK(last < 3);
}

TEST_CASE("one gross reading among the pairs is left out") {
    // origin_regression_turns.json has the like: one outlier moves least squares from 0.404 to 0.352.
    std::vector<double> turns(9, -0.125), changes = {-0.74, -0.76, -0.75, -0.73, -0.77, -0.75, -0.74, -0.76, 1.5};
    const Response with = answerOf(letOffTrials(turns, changes).record, operation::letOffTurn);
    turns.pop_back();
    changes.pop_back();
    const Response without = answerOf(letOffTrials(turns, changes).record, operation::letOffTurn);
    CHECK(with.pairs == 8);
    CHECK(with.effects.front().perUnit == Approx(without.effects.front().perUnit));
}

TEST_CASE("two trials are no lesson, nor is work that was set to the aim, nor work without a reading after it") {
    CHECK_FALSE(answerOf(letOffTrials({-0.125, -0.125}, {-0.7, -0.8}).record, operation::letOffTurn).learned);
    Scene aimed = letOffTrials({-0.125, -0.125, -0.125}, {-0.7, -0.8, -0.7});
    for (Done& done : aimed.record.done) {
        done.amount.reset();
        done.toAim = true;
    }
    CHECK_FALSE(answerOf(aimed.record, operation::letOffTurn).learned);
    Scene unread = letOffTrials({-0.125, -0.125, -0.125}, {-0.7, -0.8, -0.7});
    unread.record.passes.pop_back();
    CHECK_FALSE(answerOf(unread.record, operation::letOffTurn).learned);
}

TEST_CASE("other work between the readings does not hide in the lesson") {
    // A pad of 1 mm on the rest rail opens the lost motion by k/R while the capstans, at 2 mm a turn, take it up.
    Scene scene(upright(), "upright");
    const double k = scene.record.piano.railFactor;
    for (const int note : {20, 25, 28, 40, 44}) { // naturals
        scene.read(note, lostMotion, 1.0);
        scene.did(operation::capstanTurn, note, 0.25);
        scene.did(operation::restRailShim, note, 1.0);
    }
    scene.nextPass();
    for (const int note : {20, 25, 28, 40, 44})
        scene.read(note, lostMotion, 1.0 - 0.25 * 2.0 + k / kRatio[0]);
    const Response learned = answerOf(scene.record, operation::capstanTurn);
    CHECK(learned.learned);
    CHECK(learned.effects.front().perUnit == Approx(-2.0).epsilon(0.01));
}

TEST_CASE("the words of a direction follow what was learned, not the kind of action") {
    // A drop button that answers as a capstan of an upright does: less lost motion by turning it anticlockwise.
    Piano piano = *makePiano(ActionKind::drop);
    piano.gauges["lost-motion"] = "good"; // a quarter turn of 0.3 mm is told by three notes, as it must be by each set
    Scene scene(piano, "drop");
    for (int n = 1; n <= 88; ++n)
        scene.read(n, lostMotion, 1.2);
    CHECK(stepOf(scene.plan(), operation::capstanTurn, 40)->direction == Direction::clockwise);
    for (const int note : {22, 34, 44, 54, 66, 78})
        scene.did(operation::capstanTurn, note, 0.25);
    scene.nextPass();
    for (const int note : {22, 34, 44, 54, 66, 78})
        scene.read(note, lostMotion, 1.5);
    const Step* turned = stepOf(scene.plan(), operation::capstanTurn, 40);
    REQUIRE(turned);
    CHECK(turned->direction == Direction::anticlockwise);
    CHECK(*turned->amount < 0); // in the sense of the row, which is clockwise here
}

TEST_CASE("a new reading is weighed with what is expected") {
    // By hand: k = V/(V + u^2); after work V grows by (amount sd)^2 and the hand's (perUnit (0.05 a + 0.02))^2.
    Scene scene(upright(), "upright");
    scene.read(40, letOff, 4.0);
    scene.did(operation::letOffTurn, 40, -0.125);
    scene.nextPass();
    scene.read(40, letOff, 3.0);
    const auto guesses = firstResponses(scene.record.piano, kRatio);
    const auto state = stateOf(scene.record, 2, guesses, kRatio);
    const double u = toTrade(uncertaintyOf(letOff, scene.record.piano), Kind::length);
    double perUnit = 0, sd = 0;
    for (const Response& r : guesses)
        if (r.operation == operation::letOffTurn) {
            perUnit = r.effects.front().perUnit;
            sd = r.effects.front().sd;
        }
    const double x = 4.0 - 0.125 * perUnit;
    const double V = u * u + std::pow(0.125 * sd, 2) + std::pow(perUnit * (0.05 * 0.125 + 0.02), 2);
    const double k = V / (V + u * u);
    CHECK(state.at({{40}, letOff}).value == Approx(x + k * (3.0 - x)));
    CHECK(state.at({{40}, letOff}).sd == Approx(std::sqrt((1 - k) * V)));
    CHECK_FALSE(state.at({{40}, letOff}).expected);
}

TEST_CASE("wood that moved, or anything that nobody ticked, is no expectation for what is read now") {
    const auto stateAfter = [](double now, std::optional<double> humidityBefore, std::optional<double> humidityNow) {
        Scene scene(upright(), "upright");
        scene.pass().humidity = humidityBefore;
        scene.read(40, lostMotion, 0.3);
        scene.nextPass();
        scene.pass().humidity = humidityNow;
        scene.read(40, lostMotion, now);
        return stateOf(scene.record, 2, firstResponses(scene.record.piano, kRatio), kRatio).at({{40}, lostMotion});
    };
    const double u = toTrade(uncertaintyOf(lostMotion, *makePiano(ActionKind::upright)), Kind::length);
    CHECK(stateAfter(0.1, {}, {}).value == Approx(0.2));   // the mean of two equal readings
    CHECK(stateAfter(0.1, 45, 47).value == Approx(0.2));   // the same air, within 1 % of moisture in the wood
    CHECK(stateAfter(-0.6, 45, 71).value == Approx(-0.6)); // S5: February and August
    CHECK(stateAfter(-0.6, 45, 71).sd == Approx(u));
    CHECK(stateAfter(2.0, {}, {}).value == Approx(2.0)); // far beyond both gauges: something was done
    CHECK(stateAfter(2.0, {}, {}).sd == Approx(u));
}
