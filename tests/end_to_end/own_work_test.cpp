// What a person says of the work on this piano, minutes and turning directions, through the built program.
#include "bench.h"

using namespace hammerline::test;

namespace {

/// Let-off of four notes and lost motion of two; all of it out.
Readings looseReadings() {
    Readings readings;
    for (const int note : {20, 21, 40, 60})
        readings[note] = {{"let-off", "6"}, {"blow", "46"}, {"key-dip", isNatural(note) ? "10.2" : "9.6"}};
    for (const int note : {30, 50})
        readings[note] = {{"lost-motion", "1.6"}};
    return readings;
}

} // namespace

TEST_CASE("minutes said of this piano go into its plan, and an empty value takes them back") {
    Bench bench({"--action", "upright"});
    bench.read(looseReadings(), true);
    const json before = bench.plan();
    const json one = stepAt(before, "let-off-turn", 20);
    REQUIRE(one.is_object());
    CHECK(one.at("minutes") == 0.5); // bench-practice 2.7, a practised hand
    bench.done("piano", {"--attribute", "minutes-let-off-turn=2"});
    const json after = bench.plan();
    CHECK(stepAt(after, "let-off-turn", 20).at("minutes") == 2);
    const double more = 1.5 * static_cast<double>(steps(before, "let-off-turn").size());
    CHECK(after.at("minutes").get<double>() - before.at("minutes").get<double>() == Approx(more));
    bench.done("piano", {"--attribute", "minutes-let-off-turn="});
    CHECK(bench.plan().at("minutes") == before.at("minutes"));
}

TEST_CASE("minutes of getting there count once") {
    Bench bench({"--action", "upright", "--attribute", "player=above"});
    bench.read({{30, {{"lost-motion", "1.6"}}}}, true);
    const double before = bench.plan().at("minutes");
    bench.done("piano", {"--attribute", "minutes-stack-out=95"});
    CHECK(bench.plan().at("minutes").get<double>() - before == Approx(95 - 60)); // bench-practice 2.7: 60 to 150
}

TEST_CASE("a turning direction said of this piano stands in plan, sheet and frozen plan") {
    Bench bench({"--action", "upright"});
    bench.read(looseReadings(), true);
    CHECK(stepAt(bench.plan(), "capstan-turn", 30).at("direction") == "anticlockwise"); // situation 24
    bench.tick("let-off-turn:20"); // freezes the plan with the customary word
    bench.done("piano", {"--attribute", "capstan-up=clockwise"});
    CHECK(stepAt(bench.plan(), "capstan-turn", 30).at("direction") == "clockwise");
    CHECK(stepAt(bench.plan({"--intent", "full"}), "capstan-turn", 30).at("direction") == "clockwise");
    const std::string sheet = bench.sheet("adjustment");
    CHECK(sheet.find("UP = clockwise, seen from above: less lost motion.") != std::string::npos);
    CHECK(sheet.find("anticlockwise, seen from above") == std::string::npos);

    CHECK(sheet.find("OUT = anticlockwise, seen from the screw's eye") != std::string::npos);
    bench.done("piano", {"--attribute", "let-off-in=anticlockwise"});
    CHECK(bench.sheet("adjustment").find("OUT = clockwise, seen from the screw's eye: nearer the string.") !=
          std::string::npos);
    CHECK(stepAt(bench.plan(), "let-off-turn", 21).at("direction") == "out");
}

TEST_CASE("what was said of the work goes along with the piano into JSON, another book and a merged one") {
    const Folder folder;
    const std::string a = folder / "a.hammerline", b = folder / "b.hammerline", file = folder / "a.json";
    REQUIRE(program({"new", a, "--piano", "P", "--action", "upright", "--attribute", "capstan-up=clockwise",
                     "--attribute", "minutes-let-off-turn=0,7"})
                .status == 0);
    REQUIRE(program({"export", a, "--out", file}).status == 0);
    REQUIRE(program({"new", b, "--piano", "Q", "--action", "upright"}).status == 0);
    REQUIRE(program({"merge", b, a}).status == 0);
    REQUIRE(program({"export", b, "--piano", "P", "--out", folder / "b.json"}).status == 0);
    for (const std::string& each : {file, std::string(folder / "b.json")}) {
        const std::string text = readAll(each);
        CHECK(text.find("\"capstan-up\"") != std::string::npos);
        CHECK(text.find("\"0.7\"") != std::string::npos);
    }
    const std::string c = folder / "c.hammerline";
    REQUIRE(program({"new", c, "--piano", "Q", "--action", "upright"}).status == 0);
    REQUIRE(program({"import", c, file}).status < 2);
    REQUIRE(program({"export", c, "--piano", "P", "--out", folder / "c.json"}).status == 0);
    CHECK(readAll(folder / "c.json").find("\"capstan-up\"") != std::string::npos);
}
