// What the pianos of one book teach the next: by hand-made lessons with figures that can be reckoned on paper, and in
// one shop of virtual pianos whose pitches are hidden from the planner.
#include "core/experience/experience.h"
#include "core/history/learned.h"
#include "core/history/learning.h"
#include "core/plan/plan_in_force.h"
#include "core/sheet/sheet.h"
#include "tests/core/scene.h"
#include "tests/virtual_action/shop.h"

#include <nlohmann/json.hpp>

#include <random>

using namespace hammerline;
using namespace hammerline::scene;

namespace {

Lesson lesson(std::string uuid, double answer, double sd, const Piano& piano = *makePiano(ActionKind::upright)) {
    Lesson out;
    out.uuid = std::move(uuid);
    out.piano = piano;
    out.answers[operation::letOffTurn] = {answer, sd};
    return out;
}

std::vector<Lesson> threeLessons() {
    return {lesson("a", 0.8, 0.05), lesson("b", 0.9, 0.05), lesson("c", 0.7, 0.05)};
}

const Response& letOffOf(const std::vector<Response>& all) {
    for (const Response& each : all)
        if (each.operation == operation::letOffTurn) return each;
    throw std::logic_error("no let-off");
}

constexpr std::array kRatio = {4.9, 5.3};

/// Three notes of a piano, tried with a quarter turn, that answer so many mm a turn.
PianoRecord tried(Piano piano, double perTurn) {
    Scene scene(std::move(piano), "upright");
    for (const int note : {20, 44, 68}) {
        scene.read(note, dimension::letOff, 4.0);
        scene.did(operation::letOffTurn, note, -0.25);
    }
    scene.nextPass();
    for (const int note : {20, 44, 68})
        scene.read(note, dimension::letOff, 4.0 - 0.25 * perTurn);
    return scene.record;
}

} // namespace

TEST_CASE("fewer than three pianos built alike teach nothing: the customary guess stands") {
    Piano piano = *makePiano(ActionKind::upright);
    const auto lessons = threeLessons();
    CHECK(taughtBy(piano, "new", {}, std::span(lessons).first(2)) == Taught{});
    CHECK(taughtBy(piano, "a", {}, lessons) == Taught{}); // its own lesson is not one of the others
    Piano other = piano;
    other.letOff = LetOffScrew::frontScrew;
    CHECK(taughtBy(other, "new", {}, lessons) == Taught{});
    piano.taught = taughtBy(piano, "new", {}, std::span(lessons).first(2));
    const Response response = letOffOf(firstResponses(piano, kRatio));
    CHECK_FALSE(response.others);
    CHECK(response.effects.front().perUnit == Approx(6)); // bench-practice 2.5
}

TEST_CASE("three pianos teach the next: mean, spread and count by the published formulas") {
    Piano piano = *makePiano(ActionKind::upright);
    piano.taught = taughtBy(piano, "new", {}, threeLessons());
    REQUIRE(piano.taught.answers.size() == 1);
    const TaughtFigure& figure = piano.taught.answers.at("let-off-turn");
    CHECK(figure.pianos == 3);
    CHECK(figure.value == Approx(0.8).margin(0.001));
    // DerSimonian and Laird by hand: w = 400 each, Q = 400 (0.01 + 0.01) = 8, tau^2 = (8 - 2)/(1200 - 400) = 0.0075,
    // variance of the next case 0.0075 + 0.01/3: three pianos leave more doubt than that, and less than the band of
    // 0.5.
    CHECK(figure.sd > std::sqrt(0.0075 + 0.01 / 3));
    CHECK(figure.sd < 0.4);
    const Response response = letOffOf(firstResponses(piano, kRatio));
    REQUIRE(response.others);
    CHECK(response.others->pianos == 3);
    CHECK(response.others->customary.perUnit == Approx(6));
    CHECK(response.effects.front().perUnit == Approx(4.8));
    CHECK_FALSE(response.learned); // a guess, whoever it comes from
}

TEST_CASE("many pianos that agree leave a narrow guess, never narrower than a twentieth") {
    std::vector<Lesson> lessons;
    for (int i = 0; i < 30; ++i)
        lessons.push_back(lesson(std::to_string(i), 0.8, 0.05));
    const Piano piano = *makePiano(ActionKind::upright);
    const double sd = taughtBy(piano, "new", {}, lessons).answers.at("let-off-turn").sd;
    CHECK(sd >= 0.05);
    CHECK(sd < 0.06);
}

TEST_CASE("what others taught is no number of turns: the own trial is still asked for") {
    Scene scene(upright(), "upright");
    scene.readAll(dimension::letOff, 5.5);
    std::vector<Lesson> lessons;
    for (int i = 0; i < 20; ++i)
        lessons.push_back(lesson(std::to_string(i), 0.8, 0.02));
    teach(scene.record, lessons);
    const Plan plan = scene.plan();
    REQUIRE_FALSE(plan.trials.empty());
    CHECK(plan.trials.front().operation == operation::letOffTurn);
    const std::vector<NoteNumber>& notes = plan.trials.front().notes;
    for (const Step& step : plan.steps) {
        const bool ofTheTrial = step.note && std::ranges::find(notes, *step.note) != notes.end();
        if (step.operation == operation::letOffTurn && !ofTheTrial) CHECK_FALSE(step.amount);
        if (step.operation == operation::letOffTurn && ofTheTrial && step.amount)
            CHECK(std::abs(*step.amount) == Approx(std::abs(plan.trials.front().amount)));
    }
    const auto json = nlohmann::json::parse(planJson(plan, scene.record));
    bool shown = false;
    for (const auto& row : json.at("responses"))
        if (row.at("operation") == "let-off-turn" && row.at("dimension") == "let-off") {
            shown = true;
            CHECK(row.at("others").at("pianos") == 20);
            CHECK(row.at("others").at("customary") == 6);
            CHECK(row.at("learned") == false);
        }
    CHECK(shown);
    // frozen and read again it says the same
    const auto again = thaw(freeze(plan, "p"), scene.record.piano);
    REQUIRE(again);
    REQUIRE(letOffOf(again->responses).others);
    CHECK(letOffOf(again->responses).others->pianos == 20);
}

TEST_CASE("a trial weighs the others' guess with its own readings, and contradicts it where it must") {
    std::vector<Lesson> lessons;
    for (int i = 0; i < 20; ++i)
        lessons.push_back(lesson(std::to_string(i), 0.8, 0.02));
    Piano piano = *makePiano(ActionKind::upright);
    const PianoRecord plain = tried(piano, 5.2);
    PianoRecord taught = plain;
    teach(taught, lessons);
    const Response without = letOffOf(learnedResponses(plain, kRatio)),
                   with = letOffOf(learnedResponses(taught, kRatio));
    REQUIRE(with.others);
    CHECK(with.effects.front().sd < without.effects.front().sd / 2);
    CHECK(with.effects.front().perUnit == Approx(4.8).margin(0.3));
    // screws twice as coarse as any before: their own readings stand alone
    PianoRecord odd = tried(piano, 12);
    teach(odd, lessons);
    CHECK(letOffOf(learnedResponses(odd, kRatio)).effects.front().perUnit > 9);
    // screws of half the pitch of the others are sound screws
    PianoRecord fine = tried(piano, 3.2);
    teach(fine, lessons);
    for (const TrialAnswer& each : learn(fine, kRatio).trials)
        CHECK(each.says != TrialSays::doesNotAnswer);
}

TEST_CASE("a lesson carries how much, never which way, and of what was really tried") {
    const Lesson sound = lessonOf(tried(*makePiano(ActionKind::upright), 5.2));
    REQUIRE(sound.answers.contains(operation::letOffTurn));
    CHECK(sound.answers.at(operation::letOffTurn).value == Approx(5.2 / 6));
    const Lesson against = lessonOf(tried(*makePiano(ActionKind::upright), -5.2)); // three notes turn no direction
    CHECK_FALSE(against.answers.contains(operation::letOffTurn));
    PianoRecord nothing;
    nothing.piano = *makePiano(ActionKind::grand);
    CHECK(lessonOf(nothing).empty());
}

TEST_CASE("minutes are the median of what a step took the same person, with the shortest and the longest") {
    std::vector<Lesson> lessons;
    for (const double minutes : {20.0, 60.0, 30.0, 25.0}) {
        Lesson each = lesson(std::to_string(minutes), 1, 0.1);
        each.worker = "N. N.";
        each.minutes["take-keys-off"] = minutes;
        lessons.push_back(each);
    }
    const Piano piano = *makePiano(ActionKind::upright);
    const auto mine = taughtBy(piano, "new", "N. N.", lessons).minutes;
    REQUIRE(mine.contains("take-keys-off"));
    CHECK(mine.at("take-keys-off") == TaughtMinutes{4, 27.5, 20, 60});
    CHECK(taughtBy(piano, "new", "M. M.", lessons).minutes.empty());
    CHECK(taughtBy(piano, "new", "", lessons).minutes.size() == 1); // not said: the shop's
}

TEST_CASE("the others' ratio stands until this piano's readings tell its own; a typed one goes before all") {
    std::vector<Lesson> lessons;
    for (int i = 0; i < 6; ++i) {
        Lesson each = lesson(std::to_string(i), 1, 0.1);
        each.ratio[0] = CaseEstimate{4.6 + 0.01 * i, 0.03};
        lessons.push_back(each);
    }
    Piano piano = *makePiano(ActionKind::upright);
    piano.taught = taughtBy(piano, "new", {}, lessons);
    CHECK(defaultRatio(piano, KeyColour::natural) == Approx(4.625).margin(0.001));
    CHECK(defaultRatio(piano, KeyColour::sharp) > 4.9); // no sharps were taught: by the arms, from the customary one
    CHECK(estimateRatio(piano, Pass{}, KeyColour::natural).fromDefault());
    CHECK(estimateRatio(piano, Pass{}, KeyColour::natural).spread < 0.33 / 4.9 * 4.625);
    piano.ratio[0] = 5.1;
    CHECK(estimateRatio(piano, Pass{}, KeyColour::natural).value == 5.1);
}

TEST_CASE("how a person reads is taken over within what gauges can do") {
    const auto with = [](double u) {
        std::vector<Lesson> lessons;
        for (int i = 0; i < 5; ++i) {
            Lesson each = lesson(std::to_string(i), 1, 0.1);
            each.uncertainties[dimension::letOff] = {std::log(u), 0.1};
            lessons.push_back(each);
        }
        return lessons;
    };
    Piano piano = *makePiano(ActionKind::upright);
    const std::int64_t told = uncertaintyOf(dimension::letOff, piano);
    piano.taught = taughtBy(piano, "new", {}, with(0.3));
    CHECK(uncertaintyOf(dimension::letOff, piano) == fromMm(0.3).nm);
    CHECK(told != fromMm(0.3).nm);
    piano.taught = taughtBy(piano, "new", {}, with(0.0001)); // repeats that were copied are no gauge
    const auto& u = row(dimension::letOff).u;
    CHECK(uncertaintyOf(dimension::letOff, piano) == u[static_cast<std::size_t>(Gauge::good)]);
    piano.gauges["let-off"] = "rule"; // another gauge than theirs
    CHECK(taughtBy(piano, "new", {}, with(0.3)).uncertainties.empty());
}

TEST_CASE("the interval of the next piano holds it about as often as it says, from three pianos on") {
    std::mt19937 chance(20261129);
    for (const double between : {0.0, 0.1, 0.25})
        for (const int pianos : {3, 5, 12, 30}) {
            int held = 0;
            constexpr int kShops = 200;
            for (int shop = 0; shop < kShops; ++shop) {
                std::normal_distribution<double> truth(0.85, between), error(0, 0.06);
                std::vector<Lesson> lessons;
                for (int i = 0; i < pianos; ++i)
                    lessons.push_back(lesson(std::to_string(i), truth(chance) + error(chance), 0.06));
                const Piano piano = *makePiano(ActionKind::upright);
                const auto taught = taughtBy(piano, "new", {}, lessons);
                const TaughtFigure& figure = taught.answers.at("let-off-turn");
                const double next = truth(chance);
                held += next >= figure.low95 && next <= figure.high95 ? 1 : 0;
            }
            INFO("between " << between << ", pianos " << pianos << ": " << held << " of " << kShops);
            CHECK(held >= kShops * 91 / 100);
        }
}

namespace {

/// Over shops: the pianos that have at least ten before them.
struct Saved {
    double guess = 0, after = 0, sd = 0; // relative errors; standard uncertainty after a trial, mm a turn
    int held = 0, counted = 0;
};
Saved savedBy(bool taught, bool oneMake) {
    Saved out;
    for (std::uint64_t shop = 1; shop <= 8; ++shop) {
        const auto pianos = virtual_action::workThrough(
            {.pianos = 25, .firstSeed = 500 + 100 * shop, .make = oneMake ? shop : 0}, taught);
        for (std::size_t i = 10; i < pianos.size(); ++i) {
            const auto& guess = pianos[i].guesses.front();
            out.guess += guess.error();
            out.after += guess.errorOfTrial();
            out.sd += guess.learnedSd;
            out.held += guess.low <= guess.truth && guess.truth <= guess.high ? 1 : 0;
            ++out.counted;
        }
    }
    out.guess /= out.counted;
    out.after /= out.counted;
    out.sd /= out.counted;
    return out;
}

} // namespace

// Each piano is tried with an eighth of a turn on three notes and simple gauges, and taught by those before it.
TEST_CASE("pianos of one make teach the next what the customary figure cannot know") {
    const Saved plain = savedBy(false, true), taught = savedBy(true, true);
    INFO("error of the guess " << plain.guess << " -> " << taught.guess << ", after a trial " << plain.after << " -> "
                               << taught.after << ", its sd " << plain.sd << " -> " << taught.sd << ", held "
                               << taught.held << " of " << taught.counted);
    CHECK(taught.guess < 0.67 * plain.guess);
    CHECK(taught.after < 0.67 * plain.after);
    CHECK(taught.sd < 0.67 * plain.sd);
    CHECK(taught.held >= taught.counted * 90 / 100);
}

TEST_CASE("pianos of many makes teach how far they differ: the interval holds, and a trial is no worse") {
    const Saved plain = savedBy(false, false), taught = savedBy(true, false);
    INFO("error of the guess " << plain.guess << " -> " << taught.guess << ", after a trial " << plain.after << " -> "
                               << taught.after << ", its sd " << plain.sd << " -> " << taught.sd << ", held "
                               << taught.held << " of " << taught.counted);
    CHECK(taught.guess < 1.1 * plain.guess); // these pianos lie about the customary figure
    CHECK(taught.after < plain.after);
    CHECK(taught.held >= taught.counted * 90 / 100);
}
