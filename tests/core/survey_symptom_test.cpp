// Symptoms answered from readings and findings together (bench-practice 5; situations 36, C6, C10).
#include "core/sheet/pass_view.h"
#include "core/sheet/work_order.h"
#include "tests/core/survey_bench.h"

#include <algorithm>

using namespace hammerline;
using namespace hammerline::survey_bench;

namespace {

void hear(PianoRecord& record, std::string_view typed) {
    const auto symptom = parseSymptom(typed, record.piano);
    REQUIRE(symptom);
    record.symptoms.push_back(*symptom);
}

Pass& passOf(PianoRecord& record, bool stackIn = false) {
    Pass pass;
    pass.number = static_cast<int>(record.passes.size()) + 1;
    pass.stackIn = stackIn;
    record.passes.push_back(pass);
    return record.passes.back();
}

void read(Pass& pass, int from, int to, DimensionId dimension, double mm) {
    for (int n = from; n <= to; ++n) {
        Reading reading;
        reading.count = static_cast<std::int64_t>(std::llround(mm * kNmPerMm));
        pass.cells[{{n}, dimension}].trials = {reading};
    }
}

const Advice::Check* check(const Advice& advice, std::string_view id) {
    for (const Advice::Check& each : advice.checks)
        if (each.id == id) return &each;
    return nullptr;
}

/// Its place in the order in which it is looked at.
std::ptrdiff_t place(const Advice& advice, std::string_view id) {
    return check(advice, id) - advice.checks.data();
}

} // namespace

TEST_CASE("a symptom without any reading is answered by the survey alone") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    hear(record, "20-30 double-strike");
    CHECK_FALSE(check(adviceOf(record).front(), "jack-spring")->supported.has_value());
    add(record.findings, "24 jack-spring weak", record.piano);
    state(record.findings, "20-30 butt-spring sound", record.piano);
    const Advice advice = adviceOf(record).front();
    CHECK(check(advice, "jack-spring")->supported == true);
    CHECK(check(advice, "butt-spring")->supported == false);
    CHECK_FALSE(check(advice, "lost-motion")->supported.has_value());
    CHECK_FALSE(advice.noDimensionExplains);
}

TEST_CASE("a part is ruled out only where every note of the symptom was looked at") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    hear(record, "20-30 double-strike");
    state(record.findings, "20-29 jack-spring sound", record.piano);
    CHECK_FALSE(check(adviceOf(record).front(), "jack-spring")->supported.has_value());
    state(record.findings, "30 jack-spring mended", record.piano);
    CHECK(check(adviceOf(record).front(), "jack-spring")->supported == false);
    add(record.findings, "31 jack-spring broken", record.piano); // the neighbour does not count
    CHECK(check(adviceOf(record).front(), "jack-spring")->supported == false);
}

TEST_CASE("readings and findings answer one symptom: the reading that shows it, the part that was found") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    hear(record, "1-44 double-strike");
    Pass& pass = passOf(record);
    read(pass, 1, 44, dimension::lostMotion, 1.2); // bench-practice 5: M > 0.8
    read(pass, 1, 44, dimension::letOff, 3.2);
    add(record.findings, "12 butt-spring loop-broken", record.piano);
    const Advice advice = adviceOf(record).front();
    CHECK(check(advice, "lost-motion")->supported == true);
    CHECK(check(advice, "let-off-too-near")->supported == false);
    CHECK(check(advice, "butt-spring")->supported == true);
    CHECK(place(advice, "lost-motion") < place(advice, "butt-spring"));
}

TEST_CASE("all readings in order: no adjustment is invented, the parts come first") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    hear(record, "1-44 double-strike");
    Pass& pass = passOf(record);
    read(pass, 1, 44, dimension::lostMotion, 0.3);
    read(pass, 1, 44, dimension::letOff, 3.2);
    const Advice advice = adviceOf(record).front();
    CHECK(advice.noDimensionExplains);
    CHECK(place(advice, "jack-spring") < place(advice, "lost-motion"));
    for (const Advice::Check& each : advice.checks)
        if (each.supported == false) CHECK(each.sideEffects.empty());
}

TEST_CASE("situation C6: keys wink with the soft pedal down, so straps or wires are too tight (list post, Nov 2005)") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    hear(record, "all soft-pedal-keys-wink");
    Pass& pass = passOf(record);
    Reading tight;
    tight.word = word::tight;
    for (int n = 1; n <= 88; ++n)
        pass.cells[{{n}, dimension::strap}].trials = {tight};
    const Advice advice = adviceOf(record).front();
    REQUIRE_FALSE(advice.checks.empty());
    CHECK(advice.checks.front().id == "straps-tight");
    CHECK(advice.checks.front().supported == true);
}

TEST_CASE("situation C10: what bobbles only by the player is the finger's travel (digest of December 1996)") {
    PianoRecord record = recordOf(playerUpright());
    hear(record, "1-85 bobbling-only-by-player");
    Pass& pass = passOf(record, true);
    read(pass, 1, 85, dimension::playerClearance, 0.2);
    const Advice byPlayer = adviceOf(record).front();
    CHECK(byPlayer.checks.front().id == "player-clearance");
    CHECK(byPlayer.checks.front().supported == true);
    // By hand as well: the action itself, and nothing of the player is asked.
    record.symptoms.clear();
    hear(record, "1-85 double-strike");
    CHECK(check(adviceOf(record).front(), "player-clearance") == nullptr);
}

TEST_CASE("every symptom has something to look at, unless this action cannot have it") {
    PianoRecord upright = recordOf(playerUpright()), grand = recordOf(pianoOf(ActionKind::grand)),
                drop = recordOf(pianoOf(ActionKind::drop));
    for (PianoRecord* record : {&upright, &grand, &drop}) {
        record->symptoms.clear();
        const auto heard = symptomsOf(record->piano);
        for (const auto key : heard)
            hear(*record, "1-20 " + std::string(key));
        const auto advice = adviceOf(*record);
        REQUIRE(advice.size() == heard.size());
        for (const Advice& each : advice) {
            INFO(each.symptom);
            CHECK_FALSE(each.checks.empty());
        }
    }
}

TEST_CASE("a symptom of another kind of action cannot be said, and is not offered") {
    // What belongs to which kind: common practice, no source.
    const Piano upright = pianoOf(ActionKind::upright), grand = pianoOf(ActionKind::grand);
    for (const auto& [key, onUpright, onGrand] :
         {std::tuple{"frame-knocks", false, true}, std::tuple{"grand-bubbling-all", false, true},
          std::tuple{"soft-pedal-keys-wink", true, false}, std::tuple{"hammers-stand-off-the-rail", true, false},
          std::tuple{"bobbling-only-by-player", false, false}, std::tuple{"squeak", true, true}}) {
        INFO(key);
        CHECK(parseSymptom(std::string("1-20 ") + key, upright).has_value() == onUpright);
        CHECK(parseSymptom(std::string("1-20 ") + key, grand).has_value() == onGrand);
    }
    const auto refused = parseSymptom("1-20 frame-knocks", upright);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == RefusalCode::unknownSymptom);
    CHECK(refused.error().detail.find("double-strike") != std::string::npos);
    CHECK(refused.error().detail.find("frame-knocks") == std::string::npos);
}

TEST_CASE("a player's finger that holds the wippen is told from missing lost motion") {
    // Scenario S6: another pass with the stack in, lost motion 0 where the clearance is 0.3 or less.
    PianoRecord record = recordOf(playerUpright());
    for (const bool stackIn : {true, false}) {
        record.passes.clear();
        Pass& pass = passOf(record, stackIn);
        read(pass, 1, 85, dimension::lostMotion, 0.3);
        read(pass, 1, 85, dimension::playerClearance, 1.2);
        // Off their rail, not at nothing: with the hammers on the rail a lost motion of 0 is no fault and turns
        // nothing.
        read(pass, 10, 18, dimension::lostMotion, -0.2);
        read(pass, 10, 18, dimension::playerClearance, 0.3);
        const auto view = viewPass(record, 1);
        REQUIRE(view);
        const auto held = std::find_if(view->causes.begin(), view->causes.end(),
                                       [](const Cause& c) { return c.key == "finger-holds-wippen"; });
        CHECK((held != view->causes.end()) == stackIn);
        if (stackIn) CHECK(writeNotes(held->notes) == "10-18");
        // No capstan is turned for a reading that the finger makes, near the zone's edge as it may lie.
        const auto plan = makePlan(record, sheetOf(record), 1, {});
        REQUIRE(plan);
        const auto turned = std::count_if(plan->steps.begin(), plan->steps.end(), [](const Step& s) {
            return s.operation == operation::capstanTurn && s.note && s.note->value >= 10 && s.note->value <= 18;
        });
        CHECK(turned == (stackIn ? 0 : 9));
    }
}
