// Situations 11, 19 and 20 through the built program: a line that hangs, datums that do not mix, a bench that does not
// hold the keys as the piano did.
#include "bench.h"

using namespace hammerline::test;

namespace {

Answer run(const Bench& bench, std::vector<std::string> words) {
    words.insert(words.begin() + 1, bench.path());
    return program(words);
}

} // namespace

TEST_CASE("situation 11: heights typed as gaps under a line that sags") {
    for (const bool said : {true, false}) {
        Bench bench({"--action", "upright", "--attribute", "gauge-key-height=good"});
        bench.done("pass",
                   said ? std::vector<std::string>{"--line-sag", "steel 0.5 mm 10 N"} : std::vector<std::string>{});
        // level naturals 1 mm under the ends of the line: the gap is short by the sag where the line hangs
        int natural = 0;
        for (int note = 1; note <= 88; ++note) {
            if (!isNatural(note)) continue;
            const double x = natural++ / 51.0;
            if (natural % 3 == 1) bench.enter(note, "key-height", "gap " + typed(0.4 - 4 * 0.2835 * x * (1 - x)));
        }
        const json check = bench.check();
        double highest = -9, lowest = 9;
        for (const auto& each : check.at("ranked")) {
            highest = std::max(highest, each.at("value").get<double>());
            lowest = std::min(lowest, each.at("value").get<double>());
        }
        CHECK(highest - lowest == Approx(said ? 0 : 0.2835).margin(0.002));
        CHECK(lowest == Approx(-0.4).margin(0.001));
    }
}

TEST_CASE("a sag that is none, or of a line that is not there, is refused in one sentence") {
    Bench bench({"--action", "upright"});
    const Answer bad = run(bench, {"pass", "--line-sag", "oak 3 mm"});
    CHECK(bad.status == 2);
    CHECK(bad.err.find("steel 0.5 mm 10 N") != std::string::npos);
    CHECK(run(bench, {"pass", "--line-sag", "0.3", "--reference", "key-height=bed"}).status == 2);
    CHECK(run(bench, {"pass", "--at", "cellar"}).status == 2);
}

TEST_CASE("situation 19: 21 over the slip and 63.5 over the bed") {
    Bench bench({"--action", "upright"});
    bench.done("pass", {"--reference", "key-height=slip"});
    bench.enter(40, "key-height", "21");
    const Answer mixed = run(bench, {"enter", "42", "key-height", "63.5"});
    CHECK(mixed.status == 1);
    CHECK(mixed.err.find("another datum") != std::string::npos);
    const Answer forced = run(bench, {"enter", "42", "key-height", "63.5", "--take-doubtful"});
    CHECK(forced.status != 0);
    std::ofstream(bench.file("bed.csv")) << "note;key height\n40;63.5\n42;63.5\n";
    const json taken = bench.answer("import", {bench.file("bed.csv"), "--take-doubtful"});
    CHECK(taken.at("taken") == 0);
    CHECK(taken.at("questions").size() == 2);
    CHECK(bench.check().at("ranked").size() == 1);
}

TEST_CASE("situation 20: the plan of a pass on the bench waits for the reference notes") {
    Bench bench({"--action", "upright", "--attribute", "gauge-key-dip=good", "--attribute", "gauge-key-height=good"});
    const Readings piano = {{16, {{"key-height", "0.05"}, {"key-dip", "10.2"}}},
                            {40, {{"key-height", "0"}, {"key-dip", "10.1"}}},
                            {61, {{"key-height", "-0.1"}, {"key-dip", "10.2"}}},
                            {80, {{"key-height", "0"}, {"key-dip", "10.3"}}}};
    bench.done("pass", {"--label", "as found"});
    bench.read(piano);
    bench.done("pass", {"--label", "on the bench", "--at", "bench"});
    bench.enter(20, "key-dip", "8.9");
    CHECK(bench.plan().at("bench").at("state") == "not-read");
    CHECK(bench.plan().at("steps").empty());
    bench.read(piano);
    bench.enter(40, "key-dip", "10.5");
    const json waiting = bench.plan();
    CHECK(waiting.at("bench").at("state") == "not-reproduced");
    CHECK(waiting.at("steps").empty());
    const Answer said = run(bench, {"plan"});
    CHECK(said.status == 1);
    CHECK(said.err.find("Bench set-up not reproduced.") != std::string::npos);
    CHECK(run(bench, {"tick", "--all"}).status == 2);
    CHECK(bench.sheet("adjustment").find("Bench set-up not reproduced.") != std::string::npos);
    bench.enter(40, "key-dip", "10.2");
    const json plan = bench.plan();
    CHECK(plan.at("bench").at("state") == "reproduced");
    CHECK_FALSE(plan.at("steps").empty());
}
