// Situation C6 and the look at the straps of scenario S12: keys that wink with the soft pedal down.
#include "core/history/straps.h"
#include "core/survey/job.h"
#include "tests/core/scene.h"

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;

namespace {

bool holds(const std::vector<Cell>& cells, int note, DimensionId dimension) {
    return std::find(cells.begin(), cells.end(), Cell{{note}, dimension}) != cells.end();
}

bool readsNext(const Plan& plan, int note, DimensionId dimension) {
    return std::any_of(plan.readNext.begin(), plan.readNext.end(), [&](const ToRead& each) {
        return each.cell == Cell{{note}, dimension};
    });
}

/// Too much lost motion at 30 and 50, right everywhere else.
Scene winking() {
    Piano piano = upright();
    piano.gauges["lost-motion"] = "good";
    Scene scene(piano, "upright");
    scene.readAll(lostMotion, 0.2);
    scene.readAll(blow, 46);
    scene.read(30, lostMotion, 1.5);
    scene.read(50, lostMotion, 1.5);
    return scene;
}

void foundTight(Scene& scene, std::string_view notes) {
    const auto found = parseFindings(std::string(notes) + " bridle-wire too-tight", scene.record.piano);
    REQUIRE(found.has_value());
    scene.record.findings = *found;
}

} // namespace

// Basis: a list post of November 2005 (situation C6): straps taut at the soft pedal's half blow, and no key winks.
TEST_CASE(
    "C6: where keys wink the wires are bent back, and the lost motion that was read there is no ground for work") {
    const Scene free = winking();
    CHECK(stepOf(free.plan(), operation::capstanTurn, 30));
    for (const char* said : {"finding", "symptom", "word"}) {
        INFO(said);
        Scene scene = winking();
        if (said == std::string_view("finding")) foundTight(scene, "20-40");
        if (said == std::string_view("symptom")) scene.record.symptoms = {{"soft-pedal-keys-wink", {20, 40}, 0}};
        if (said == std::string_view("word"))
            for (int n = 20; n <= 40; ++n)
                scene.word(n, strap, word::tight);
        const auto stale = staleCells(scene.record, scene.pass());
        CHECK(holds(stale, 30, lostMotion));
        CHECK(holds(stale, 20, lostMotion));
        CHECK_FALSE(holds(stale, 50, lostMotion));
        CHECK_FALSE(holds(stale, 30, blow));
        const Plan plan = scene.plan();
        CHECK_FALSE(stepOf(plan, operation::capstanTurn, 30));
        CHECK(stepOf(plan, operation::capstanTurn, 50)); // it does not wink
        const Step* bend = stepOf(plan, operation::bridleBend, 30);
        REQUIRE(bend);
        CHECK(bend->direction == Direction::toward); // the wire toward the butt: slacker
        CHECK_FALSE(stepOf(plan, operation::bridleBend, 50));
        CHECK(readsNext(plan, 30, lostMotion)); // and then it is read
        CHECK_FALSE(readsNext(plan, 45, lostMotion));
    }
}

TEST_CASE("C6: a wire that was bent back, or a strap that is right again, lets lost motion count") {
    Scene scene = winking();
    scene.record.symptoms = {{"soft-pedal-keys-wink", {20, 40}, 0}};
    scene.did(operation::bridleBend, 30, 1);
    CHECK(holds(staleCells(scene.record, scene.pass()), 30, lostMotion)); // read before
    scene.nextPass();
    scene.read(30, lostMotion, 1.4);
    CHECK_FALSE(holds(staleCells(scene.record, scene.pass()), 30, lostMotion));
    CHECK(stepOf(scene.plan(), operation::capstanTurn, 30));
    CHECK_FALSE(stepOf(scene.plan(), operation::bridleBend, 30));
    scene.word(32, strap, word::ok);
    scene.read(32, lostMotion, 1.4);
    CHECK(stepOf(scene.plan(), operation::capstanTurn, 32));
}

TEST_CASE("S12: the look at the straps is asked before the plan of a vertical, not of a grand") {
    const auto asked = askBeforePlan({}, upright());
    CHECK(std::find(asked.begin(), asked.end(), "bridle-wire") != asked.end());
    const auto grand = askBeforePlan({}, *makePiano(ActionKind::grand));
    CHECK(std::find(grand.begin(), grand.end(), "bridle-wire") == grand.end());
}

TEST_CASE("S12: the next pass asks for lost motion only where the note did not wink right") {
    Scene scene(upright(), "upright");
    for (int n = 1; n <= 88; ++n)
        scene.word(n, lostMotion, n % 20 == 0 ? word::offRail : word::ok);
    const Plan plan = scene.plan();
    for (int n = 1; n <= 88; ++n)
        if (n % 20 != 0) CHECK_FALSE(readsNext(plan, n, lostMotion));
    for (const int n : {20, 40, 60, 80})
        CHECK((readsNext(plan, n, lostMotion) || stepOf(plan, operation::capstanTurn, n)));
}
