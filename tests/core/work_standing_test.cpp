// How the steps of the work stand, and what comes next (the order of work: common practice, no source).
#include "core/causes/causes.h"
#include "core/plan/plan_in_force.h"
#include "core/sheet/pass_view.h"
#include "core/sheet/work_now.h"
#include "core/sheet/work_said.h"
#include "tests/core/survey_bench.h"

#include <algorithm>

using namespace hammerline;
using namespace hammerline::survey_bench;

namespace {

const StepNow& stepNow(const WorkNow& now, std::string_view id) {
    const auto found =
        std::find_if(now.steps.begin(), now.steps.end(), [&](const StepNow& s) { return s.step->id == id; });
    INFO(id);
    REQUIRE(found != now.steps.end());
    return *found;
}

std::string nextStep(const PianoRecord& record) {
    const NextAct next = workNow(record).next;
    return next.kind == NextKind::step ? std::string(next.step->step->id) : std::string(key(next.kind));
}

void tick(PianoRecord& record, std::string step, std::optional<NoteNumber> note = {}) {
    const std::int64_t order = static_cast<std::int64_t>(record.marks.size()) + 1'000;
    record.marks.push_back({.step = std::move(step), .note = note, .remark = {}, .order = order});
}

Pass letOffPass(const Piano& piano, double mm, int outside = 0) {
    Pass pass;
    pass.number = 1;
    for (int n = 1; n <= piano.notes; ++n) {
        Reading reading;
        reading.count = static_cast<std::int64_t>(std::llround((n <= outside ? 6.0 : mm) * kNmPerMm));
        reading.order = n;
        pass.cells[{{n}, dimension::letOff}].trials = {reading};
    }
    return pass;
}

} // namespace

TEST_CASE("a new piano begins with the first look, and every step but that waits") {
    for (const auto kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand}) {
        const PianoRecord record = recordOf(pianoOf(kind));
        const WorkNow now = workNow(record);
        CHECK(nextStep(record) == "first-look");
        CHECK(now.whole);
        for (const StepNow& each : now.steps)
            CHECK((each.state == StepState::waits) == !needsOf(*each.step, record.piano).empty());
        CHECK(now.minutes > 10 * 60);
    }
}

TEST_CASE("ticked one after the other every step comes once, in an order that its needs allow") {
    Piano old = playerUpright();
    Piano over = pianoOf(ActionKind::upright);
    over.damping = Damping::overdamper;
    for (const Piano& piano :
         {pianoOf(ActionKind::upright), old, over, pianoOf(ActionKind::drop), pianoOf(ActionKind::grand)}) {
        PianoRecord record = recordOf(piano);
        std::set<std::string> done;
        for (std::string next = nextStep(record); next != "done"; next = nextStep(record)) {
            INFO(next);
            REQUIRE(findStep(next) != nullptr);
            CHECK(offered(*findStep(next), piano));
            for (const auto need : needsOf(*findStep(next), piano))
                CHECK(done.contains(std::string(need)));
            REQUIRE(done.insert(next).second);
            tick(record, next);
        }
        CHECK(done.size() == stepsOf(piano).size());
        CHECK(workNow(record).minutes == 0);
    }
}

TEST_CASE("what was mended, found sound, or is to be mended is told by the survey") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    record.preferences["in-hand.jack-spring"] = "yes";
    state(record.findings, "all action-bolts sound", record.piano);
    add(record.findings, "5,6 jack-spring broken", record.piano);
    const WorkNow now = workNow(record);
    const StepNow& jacks = stepNow(now, "mend-wippens-and-jacks");
    CHECK(jacks.asks == StepAsks::mend);
    CHECK(jacks.notes == std::vector<NoteNumber>{{5}, {6}});
    CHECK(jacks.parts == std::vector<std::string_view>{"jack-spring"});
    CHECK(jacks.minutes == Approx(12)); // six minutes each, the remedy's own row
    CHECK(stepNow(now, "seat-action").state == StepState::notHere);
    CHECK(stepNow(now, "seat-action").reason == "sound");
    CHECK(stepNow(now, "survey-action").state == StepState::partDone); // who enters findings is looking
    state(record.findings, "5,6 jack-spring mended", record.piano);
    CHECK(stepNow(workNow(record), "mend-wippens-and-jacks").state == StepState::done);
}

TEST_CASE("a tick at notes leaves the others, and the newest word counts") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    for (int n = 1; n <= 40; ++n)
        tick(record, "ease-keys", NoteNumber{n});
    const StepNow eased = stepNow(workNow(record), "ease-keys");
    CHECK(eased.doneNotes.size() == 40);
    CHECK(eased.notes.front() == NoteNumber{41});
    CHECK(eased.minutes == Approx(48));
    tick(record, "mend-keys");
    CHECK(stepNow(workNow(record), "mend-keys").state == StepState::done);
    Finding cracked;
    cracked.note = NoteNumber{12};
    cracked.part = "key";
    cracked.fault = "cracked-at-pin-hole";
    cracked.order = 5'000; // found after the tick
    record.findings.push_back(cracked);
    CHECK(stepNow(workNow(record), "mend-keys").notes == std::vector<NoteNumber>{{12}});
    record.findings.back().order = 1; // known before it
    CHECK(stepNow(workNow(record), "mend-keys").state == StepState::done);
}

TEST_CASE("who reads every note means to regulate: only what readings and findings ask for is next") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    record.passes = {letOffPass(record.piano, 3.0, 12)};
    CHECK(nextStep(record) == "look"); // the plan asks before its lines are carried out
    for (int asked = 0; nextStep(record) == "look"; ++asked) {
        REQUIRE(asked < 40);
        const std::string_view question = workNow(record).next.question;
        const auto check = checkQuestion(question);
        std::string part(check ? check->part : question);
        if (question == "try-let-off-screws") part = "let-off-screw";
        state(record.findings, "all " + part + " sound", record.piano);
    }
    WorkNow now = workNow(record);
    CHECK_FALSE(now.whole);
    CHECK(stepNow(now, "take-photographs").reason == "not-asked");
    const StepNow& letOff = stepNow(now, "set-let-off");
    CHECK(letOff.asks == StepAsks::turn);
    CHECK(letOff.lines == 12);
    // nothing is known yet of what a turn does: three notes first
    CHECK(now.next.kind == NextKind::step);
    CHECK(now.next.step->asks == StepAsks::trial);
    CHECK(now.next.notes.size() == 3);
    record.preferences["job"] = "whole";
    CHECK(workNow(record).next.step->step->id == "take-photographs"); // the first look lies behind the readings
    record.preferences["job"] = "asked";
    record.passes = {letOffPass(record.piano, 3.0)};
    now = workNow(record);
    CHECK(stepNow(now, "set-let-off").state == StepState::done);
    CHECK(stepNow(now, "set-let-off").reason == "in-order");
    CHECK(now.next.kind == NextKind::done);
}

TEST_CASE("a repair opens the way to it, and the way back once the action is out") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    record.passes = {letOffPass(record.piano, 3.0)};
    add(record.findings, "5,6 jack-spring broken", record.piano);
    CHECK(nextStep(record) == "wait"); // nothing to put in
    CHECK(workNow(record).next.supplies == std::set<std::string>{"jack-spring"});
    record.preferences["in-hand.jack-spring"] = "yes";
    // nothing heavy leaves a piano that was not made safe, and straps are looked at before the action is moved
    for (const char* first : {"stand-it-safe", "open-case", "prop-the-wippens", "take-action-out"}) {
        CHECK(nextStep(record) == first);
        tick(record, first);
    }
    CHECK(nextStep(record) == "mend-wippens-and-jacks");
    state(record.findings, "5,6 jack-spring mended", record.piano);
    CHECK(nextStep(record) == "seat-action");
    tick(record, "seat-action");
    CHECK(nextStep(record) == "done");
}

TEST_CASE("a grand's action is drawn for the step that is next, and seated once nothing more needs it out") {
    PianoRecord record = recordOf(pianoOf(ActionKind::grand));
    record.preferences["job"] = "asked";
    tick(record, "stand-it-safe");
    add(record.findings, "30 knuckle flat tease", record.piano);
    add(record.findings, "31 repetition-lever loose-pin", record.piano); // mended with the stack off
    record.preferences["in-hand.centre-pin"] = "yes";
    std::vector<std::string> walked;
    while (walked.size() < 12 && workNow(record).next.kind == NextKind::step) {
        const std::string step(nextStep(record));
        walked.push_back(step);
        if (step == "mend-hammers") state(record.findings, "30 knuckle mended", record.piano);
        if (step == "mend-wippens-and-jacks") state(record.findings, "31 repetition-lever mended", record.piano);
        tick(record, step);
    }
    CHECK(walked == std::vector<std::string>{"draw-grand-action", "lift-grand-stack", "mend-wippens-and-jacks",
                                             "mend-hammers", "seat-grand-action"});
}

TEST_CASE("what is done with the action in waits while it lies on the bench for parts") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    add(record.findings, "all bridle-strap rotted replace-set", record.piano);
    for (int i = 0; i < 60 && workNow(record).next.kind == NextKind::step; ++i) {
        CHECK(nextStep(record) != "set-soft-pedal");
        CHECK(nextStep(record) != "seat-action");
        tick(record, nextStep(record));
    }
    CHECK(nextStep(record) == "wait");
    CHECK(workNow(record).next.supplies.contains("bridle-strap"));
}

TEST_CASE("who begins the whole job walks all of it, also once the key heights are read on the way") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    record.passes = {letOffPass(record.piano, 3.0)};
    CHECK_FALSE(workNow(record).whole);
    tick(record, "take-photographs");
    CHECK(workNow(record).whole);
    record.preferences["job"] = "asked";
    CHECK_FALSE(workNow(record).whole);
}

TEST_CASE("a step that was ticked off answers the question about what it put in order") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    const auto asked = [&](std::string_view question) {
        const auto open = askBeforePlan(record.findings, record.piano, record.marks);
        return std::ranges::find(open, question) != open.end();
    };
    CHECK(asked("flange-screws"));
    CHECK(asked("try-let-off-screws"));
    tick(record, "tighten-screws");
    CHECK_FALSE(asked("flange-screws"));
    CHECK_FALSE(asked("let-off-rail"));
    CHECK(asked("try-let-off-screws"));
    tick(record, "try-let-off-screws", NoteNumber{3});
    CHECK(asked("try-let-off-screws")); // one note is not the step
    tick(record, "try-let-off-screws");
    CHECK_FALSE(asked("try-let-off-screws"));
    CHECK(asked("capstan"));
}

TEST_CASE("a step said to be done mends its findings and ticks its lines, and nothing of another step") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    record.passes = {letOffPass(record.piano, 3.0, 12)};
    state(record.findings, "all let-off-rail sound", record.piano); // else twelve neighbours out are the rail's
    add(record.findings, "5,6 jack-spring broken", record.piano);
    add(record.findings, "7 key-top chipped", record.piano);
    const auto plan = planInForce(record, sheetOf(record), 1, {});
    REQUIRE(plan);
    const auto mended = sayStep({.step = "mend-wippens-and-jacks", .notes = {}, .remark = {}}, record, &*plan, "u");
    REQUIRE(mended);
    REQUIRE(mended->mended.size() == 2);
    CHECK(mended->mended.front().state == FindingState::mended);
    CHECK(mended->done.empty());
    CHECK_FALSE(mended->plan.has_value());
    const std::vector<NoteNumber> some = {{1}, {2}};
    const auto turned =
        sayStep({.step = "set-let-off", .notes = some, .remark = {}, .minutes = 1.02}, record, &*plan, "u");
    REQUIRE(turned);
    REQUIRE(turned->done.size() == 2);
    CHECK(turned->done.front().toAim);
    CHECK(turned->plan.has_value());
    REQUIRE(turned->said.marks.size() == 2);
    CHECK(turned->said.marks[0].seconds + turned->said.marks[1].seconds == 61);
    CHECK(sayStep({.step = "set-let", .notes = {}, .remark = {}}, record, &*plan, "u").error().code ==
          RefusalCode::noSuchStep);
    CHECK(sayStep({.step = "set-drop", .notes = {}, .remark = {}}, record, &*plan, "u").error().code ==
          RefusalCode::noSuchStep); // a grand's
    CHECK(
        sayStep({.step = "set-checks", .what = StepSaid::What::notHere, .notes = {}, .remark = {}}, record, nullptr, "")
            .error()
            .code == RefusalCode::reasonMissing);
}

TEST_CASE("a tick of the whole step that is taken back at some notes stands at the others") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    tick(record, "ease-keys");
    const auto back = sayStep({.step = "ease-keys", .what = StepSaid::What::undone, .notes = {{3}}, .remark = {}},
                              record, nullptr, "");
    REQUIRE(back);
    CHECK(back->said.takenBack.size() == 1);
    CHECK(back->said.marks.size() == 87);
}

TEST_CASE("every part of the survey and every operation has its step, on every kind that has it") {
    Piano over = pianoOf(ActionKind::upright);
    over.damping = Damping::overdamper;
    for (const Piano& piano :
         {pianoOf(ActionKind::upright), playerUpright(), over, pianoOf(ActionKind::drop), pianoOf(ActionKind::grand)}) {
        for (const Part& part : parts()) {
            if (notesOf(part, piano).empty()) continue;
            INFO(part.key);
            Finding finding;
            finding.part = part.key;
            CHECK(stepOf(finding, piano) != nullptr);
        }
        for (const Operation& each : operations()) {
            INFO(key(each.id));
            if (applies(each.id, piano)) CHECK(stepOf(each.id, NoteNumber{40}, piano) != nullptr);
        }
        for (const StepOfWork& step : allSteps())
            if (const StepEvidence* evidence = evidenceOf(step.id))
                for (const std::string_view part : evidence->parts) {
                    const auto slash = part.find('/');
                    const Part* row = findPart(part.substr(0, slash));
                    REQUIRE(row != nullptr);
                    if (slash != part.npos) CHECK(findRemedy(*row, part.substr(slash + 1)) != nullptr);
                }
    }
}

TEST_CASE("what one cause may explain is asked about, then read again, and never called done") {
    BeforeWork before;
    CHECK(nextAct({}, before).kind == NextKind::done);
    before.heldBack = {{1}, {2}};
    before.heldBackIn = dimension::letOff;
    before.questions = {"let-off-rail"};
    CHECK(nextAct({}, before).kind == NextKind::look);
    CHECK(nextAct({}, before).question == "let-off-rail");
    before.questions.clear();
    const NextAct again = nextAct({}, before);
    CHECK(again.kind == NextKind::decide);
    CHECK(again.notes == std::vector<NoteNumber>{{1}, {2}});
    CHECK(again.dimension == dimension::letOff);
}

TEST_CASE("a step that is ticked mends what it is for, and not what was referred to somebody else") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    add(record.findings, "86 string-fit one-missing refer", record.piano);
    add(record.findings, "40 hammer-flange tight ease", record.piano);
    const StepOfWork* ofStrings = stepOf(record.findings.front(), record.piano);
    REQUIRE(ofStrings);
    const auto strings = sayStep({.step = std::string(ofStrings->id), .notes = {}, .remark = {}}, record, nullptr, {});
    REQUIRE(strings);
    CHECK(strings->mended.empty());
    const auto centres = sayStep({.step = "free-centres", .notes = {}, .remark = {}}, record, nullptr, {});
    REQUIRE(centres);
    REQUIRE(centres->mended.size() == 1);
    CHECK(centres->mended.front().part == "hammer-flange");
}
