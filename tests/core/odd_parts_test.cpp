// Parts that no list knows, and work on the rest of the piano: recorded as told, never advised (common practice, no
// source; such parts are named in a list post of April 2004 on a lever without wire, 2004-April/153148, from memory).
#include "core/sheet/work_now.h"
#include "core/survey/job.h"
#include "core/survey/odd_parts.h"
#include "tests/core/survey_bench.h"

#include <algorithm>

using namespace hammerline;
using namespace hammerline::survey_bench;

namespace {

using Kept = std::map<std::string, std::string>;

Kept kept(std::initializer_list<const char*> typed) {
    Kept out;
    for (const char* each : typed) {
        const auto read = parseTerm(each);
        INFO(each);
        REQUIRE(read);
        out[read->first] = read->second;
    }
    return out;
}

} // namespace

TEST_CASE("a part that no list knows is kept in the words of who found it") {
    const auto parts = oddParts(kept({"odd-part.key lock rail=returns; under the keys; bag 4",
                                      "odd-part.heater bar=there", "odd-part.rattle rail="}));
    REQUIRE(parts.size() == 2);
    CHECK(parts[1].name == "key lock rail");
    CHECK(parts[1].state == OddPartState::returns);
    CHECK(parts[1].told == "under the keys; bag 4");
    CHECK(parts[0].state == OddPartState::there);
    for (const char* wrong : {"odd-part.=off", "odd-part.key lock rail=lost", "odd-part.bell", "work-done.lid.hinge=x",
                              "work-done.soundboard=crack", "odd-part.a\nb=off"})
        CHECK_FALSE(parseTerm(wrong));
}

TEST_CASE("work on the soundboard says what it may have moved, and asks for nothing") {
    const Kept preferences = kept(
        {"work-done.soundboard.crack filled=ribs 3 to 4, the owner, buzz gone", "work-done.case.hinge=new screws"});
    const auto done = workBeside(preferences);
    REQUIRE(done.size() == 2);
    CHECK(done[0].place == "case");
    CHECK_FALSE(done[0].movesStrings());
    CHECK(done[1].what == "crack filled");
    CHECK(done[1].movesStrings());
    PianoRecord record;
    record.piano = pianoOf(ActionKind::upright);
    record.preferences = preferences;
    const Job job = wholeJob(record.findings, record.piano, jobTerms(record.preferences));
    CHECK(job.lines.empty());
    CHECK(job.minutesOpen == 0);
}

TEST_CASE("a piano is not handed over while a part that has to go back is off") {
    PianoRecord record;
    record.piano = pianoOf(ActionKind::upright);
    const auto handOver = [&] {
        const WorkNow now = workNow(record, nullptr);
        return *std::ranges::find_if(now.steps, [](const StepNow& each) { return each.step->id == "hand-over"; });
    };
    for (const StepOfWork* step : stepsOf(record.piano)) { // all before it is done
        if (step->id == "hand-over") break;
        WorkMark mark;
        mark.step = step->id;
        mark.state = MarkState::done;
        mark.order = static_cast<std::int64_t>(record.marks.size()) + 1;
        record.marks.push_back(mark);
    }
    REQUIRE(handOver().openNow());
    record.preferences = kept({"odd-part.key lock rail=returns; bag 4"});
    CHECK(handOver().state == StepState::waits);
    CHECK(handOver().reason == "part-off");
    record.preferences = kept({"odd-part.key lock rail=back"});
    CHECK(handOver().openNow());
}
