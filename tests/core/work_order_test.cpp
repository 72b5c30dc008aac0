// The whole job in order: look, order, take apart, mend, regulate, the player, the record.
#include "core/plan/plan_in_force.h"
#include "core/sheet/parts_csv.h"
#include "core/sheet/pass_view.h"
#include "core/sheet/work_order.h"
#include "tests/core/survey_bench.h"

#include <algorithm>
#include <numeric>

using namespace hammerline;
using namespace hammerline::survey_bench;

namespace {

const WorkOrderStep& step(const WorkOrder& order, std::string_view id) {
    const auto found =
        std::find_if(order.steps.begin(), order.steps.end(), [&](const WorkOrderStep& s) { return s.id == id; });
    REQUIRE(found != order.steps.end());
    return *found;
}

std::ptrdiff_t place(const WorkOrder& order, std::string_view id) {
    return &step(order, id) - order.steps.data();
}

void lookAtEverything(PianoRecord& record) {
    for (const Part& part : parts())
        if (!notesOf(part, record.piano).empty())
            state(record.findings, "all " + std::string(part.key) + " sound", record.piano);
}

Reading mm(double value) {
    Reading reading;
    reading.count = static_cast<std::int64_t>(std::llround(value * kNmPerMm));
    return reading;
}

} // namespace

TEST_CASE("the player comes after the piano action, the record last (list reply in situation C10)") {
    const WorkOrder order = workOrder(recordOf(playerUpright()));
    for (const auto stage :
         {"before-tilting", "action", "hammers", "rails", "key-frame", "keys", "dampers", "pedals"}) {
        CHECK(place(order, "look") < place(order, stage));
        CHECK(place(order, stage) < place(order, "regulate"));
    }
    CHECK(place(order, "take-apart") < place(order, "action"));
    CHECK(place(order, "regulate") < place(order, "player"));
    CHECK(place(order, "player") < place(order, "record"));
    const WorkOrder without = workOrder(recordOf(pianoOf(ActionKind::upright)));
    CHECK(std::none_of(without.steps.begin(), without.steps.end(),
                       [](const WorkOrderStep& s) { return s.id == "player"; }));
}

TEST_CASE("nothing looked at is not nothing to do") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    const WorkOrder before = workOrder(record);
    CHECK(step(before, "look").state == WorkState::open);
    CHECK(step(before, "look").open > 40);
    CHECK(step(before, "regulate").state == WorkState::open); // not measured yet
    CHECK(step(before, "record").state == WorkState::waits);
    lookAtEverything(record);
    CHECK(step(workOrder(record), "look").state == WorkState::done);
    CHECK(step(workOrder(record), "look").open == 0);
    state(record.findings, "40 jack not-looked-at", record.piano);
    CHECK(step(workOrder(record), "look").open == 1);
}

TEST_CASE("hours of the whole job are those of its steps; getting there counts once") {
    PianoRecord record = recordOf(playerUpright());
    add(record.findings, "12,23,24,40 butt-plate broken", record.piano); // 4 x 6
    add(record.findings, "all back-rail-cloth putty", record.piano);     // 60
    const WorkOrder order = workOrder(record);
    CHECK(step(order, "action").minutesOpen == Approx(24));
    CHECK(step(order, "key-frame").minutesOpen == Approx(60));
    // Stack out and in 60, action out and in 10, keys off and on 15 (bench-practice 2.7).
    CHECK(step(order, "take-apart").minutesOpen == Approx(85));
    CHECK(order.minutesOpen == Approx(24 + 60 + 85));
    CHECK(order.unforeseen == Approx(8.4));
    CHECK(order.blockedNotes == 85);
    record.preferences["hand"] = "beginner";
    CHECK(step(workOrder(record), "take-apart").minutesOpen == Approx(150 + 25 + 30));
    record.preferences = {{"minutes.butt-plate", "9"}};
    CHECK(step(workOrder(record), "action").minutesOpen == Approx(36));
    state(record.findings, "12,23,24,40 butt-plate mended", record.piano);
    CHECK(step(workOrder(record), "action").state == WorkState::done);
    CHECK(step(workOrder(record), "action").minutesDone == Approx(36));
    CHECK(step(workOrder(record), "take-apart").minutesOpen == Approx(15)); // only the keys now
}

TEST_CASE("what waits for parts says for which, and goes on once they have come") {
    PianoRecord record = recordOf(playerUpright());
    add(record.findings, "5,6 jack-spring broken", record.piano);
    CHECK(step(workOrder(record), "action").state == WorkState::waits);
    CHECK(step(workOrder(record), "action").waitsFor == std::set<std::string>{"jack-spring"});
    CHECK(step(workOrder(record), "order").open == 1);
    add(record.findings, "30 action-brackets loose-screw", record.piano); // needs no part
    CHECK(step(workOrder(record), "action").state == WorkState::open);
    record.preferences["in-hand.jack-spring"] = "yes";
    CHECK(step(workOrder(record), "order").state == WorkState::done);
    CHECK(step(workOrder(record), "action").waitsFor.empty());
}

TEST_CASE("regulating counts the plan's steps, a player's clearance apart from them") {
    PianoRecord record = recordOf(playerUpright());
    Pass pass;
    pass.number = 1;
    pass.stackIn = true;
    for (int n = 1; n <= 85; ++n) {
        pass.cells[{{n}, dimension::letOff}].trials = {mm(n == 40 || n == 41 ? 6.0 : 3.0)};
        pass.cells[{{n}, dimension::playerClearance}].trials = {mm(n == 7 ? 2.4 : 1.2)};
    }
    record.passes = {pass};
    const auto plan = makePlan(record, sheetOf(record), 1, {});
    REQUIRE(plan);
    const auto ofPlayer = std::count_if(plan->steps.begin(), plan->steps.end(),
                                        [](const Step& s) { return s.operation == operation::playerScrew; });
    REQUIRE(ofPlayer == 1);
    const WorkOrder order = workOrder(record, &*plan);
    CHECK(step(order, "player").open == 1);
    CHECK(step(order, "regulate").open == static_cast<int>(plan->steps.size()) - 1);
    CHECK(step(order, "regulate").minutesOpen + step(order, "player").minutesOpen == Approx(plan->minutes));
    // In the plan itself the finger is set last of all.
    CHECK(plan->steps.back().operation == operation::playerScrew);
}

TEST_CASE("settings of the job are read one by one, and refused where they say nothing") {
    CHECK(parseTerm("minutes.butt-plate=8") == std::pair{std::string("minutes.butt-plate"), std::string("8")});
    CHECK(parseTerm("minutes.butt-plate=7,5"));
    CHECK(parseTerm("in-hand.centre-pin=yes"));
    CHECK(parseTerm("hand=beginner"));
    CHECK(parseTerm("minutes.no-such=8").error().code == RefusalCode::unknownPart);
    CHECK(parseTerm("in-hand.no-such=yes").error().code == RefusalCode::unknownPart);
    for (const auto wrong :
         {"minutes.butt-plate=", "minutes.butt-plate=soon", "minutes.butt-plate=-3", "spare-percent=120",
          "spare-percent", "hand=left", "in-hand.centre-pin=perhaps", "colour=red", ""})
        CHECK(parseTerm(wrong).error().code == RefusalCode::usage);
}

TEST_CASE("questions before a plan are in the plan, and an answered one leaves a frozen plan too") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    Pass pass;
    pass.number = 1;
    pass.cells[{{40}, dimension::letOff}].trials = {mm(6.0)};
    record.passes = {pass};
    auto plan = makePlan(record, sheetOf(record), 1, {});
    REQUIRE(plan);
    const auto asks = [&](std::string_view id) {
        const auto open = openQuestions(*plan, record);
        return std::find(open.begin(), open.end(), id) != open.end();
    };
    for (const auto id :
         {"try-let-off-screws", "action-bolts", "case", "let-off-rail", "capstan", "key-slip", "trapwork"})
        CHECK(asks(id));
    CHECK_FALSE(asks("player-stack"));
    plan = readPlan(writePlan(*plan));
    REQUIRE(plan);
    state(record.findings, "all action-bolts sound", record.piano);
    state(record.findings, "1-3,27-29,53-55,71-73 let-off-screw sound", record.piano);
    CHECK_FALSE(asks("action-bolts"));
    CHECK_FALSE(asks("try-let-off-screws"));
    CHECK(asks("case"));
}

TEST_CASE("situation 57: spoons wait for an even pedal lift (members' thread on dampers)") {
    PianoRecord record = recordOf(pianoOf(ActionKind::upright));
    Pass pass;
    pass.number = 1;
    for (int n = 1; n <= 60; ++n)
        pass.cells[{{n}, dimension::damperStart}].trials = {mm(n == 20 ? 12 : n == 30 ? 29 : 21)};
    record.passes = {pass};
    const auto asks = [&] {
        const auto plan = makePlan(record, sheetOf(record), 1, {});
        REQUIRE(plan);
        // Situation 56: 12 of 46 is early, so away from the damper lever; late the other way.
        for (const Step& s : plan->steps)
            if (s.operation == operation::spoonBend)
                CHECK(s.direction == (s.note == NoteNumber{20} ? Direction::away : Direction::toward));
        const auto open = openQuestions(*plan, record);
        return std::find(open.begin(), open.end(), "damper-wire") != open.end();
    };
    CHECK(asks());
    auto& rise = record.passes.front().cells[{{1}, dimension::damperRise}];
    rise.trials = {mm(6)};
    CHECK_FALSE(asks());
    rise.trials.clear();
    CHECK(asks());
    state(record.findings, "all damper-wire sound", record.piano);
    CHECK_FALSE(asks());
}

TEST_CASE("the order sheet as a table: one line a supply, nothing that a spreadsheet would run, no prices") {
    PianoRecord record = recordOf(playerUpright());
    add(record.findings, "12,23,24,40 butt-plate broken", record.piano);
    add(record.findings, "all bridle-strap rotted", record.piano);
    PartsWords words;
    words.heads = {"part", "size", "needed", "spare", "order", "unit", "faulty", "of", "notes", "measured"};
    words.measured = [](const PartsLine& line) { return std::string(line.bySize ? "not yet" : ""); };
    words.part = [](const PartsLine& line) { return (line.part == "butt-plate" ? "=" : "") + line.part; };
    words.size = [](const PartsLine& line) { return line.size; };
    CHECK(partsCsv(record, words) == "\xEF\xBB\xBFpart;size;needed;spare;order;unit;faulty;of;notes;measured\r\n"
                                     "'=butt-plate;;4;1;5;piece;4;85;12, 23-24, 40;not yet\r\n"
                                     "butt-plate-screw;;4;1;5;piece;4;85;12, 23-24, 40;not yet\r\n"
                                     "bridle-strap;;85;5;90;piece;85;85;1-85;not yet\r\n");
}
