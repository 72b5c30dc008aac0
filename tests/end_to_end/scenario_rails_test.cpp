// Scenarios of bench-practice 6 in which one common move answers for many notes, through the built program: S1, S2, S7,
// S9, S10. Notes and numbers are invented there; amounts follow from the arms stated (computation 5).
#include "bench.h"

using namespace hammerline::test;

namespace {

std::vector<std::string> upright(std::vector<std::string> more = {}) {
    std::vector<std::string> words = {"--action", "upright"};
    for (const char* attribute : {"arms-natural=235,214,142,127", "ratio-natural=5", "ratio-sharp=5"})
        words.insert(words.end(), {"--attribute", attribute});
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

} // namespace

TEST_CASE("S1: twelve samples show a sunk middle, which is shimmed at the rail's screws") {
    Bench bench(
        upright({"--player", "--attribute", "butt=brass-rail", "--attribute", "balance-screws=1,14,27,40,53,66,79,88",
                 "--attribute", "rest-rail=1-44,45-88", "--attribute", "brackets=1,44;45,88"}));
    bench.done("pass", {"--stack", "out"});
    // gaps under a straightedge; 8.9 of dip where the keys are lowest
    const std::map<int, double> gaps = {{1, 0},    {11, 0.2}, {20, 0.6},  {28, 0.95}, {35, 1.15}, {39, 1.2},
                                        {40, 1.2}, {42, 1.2}, {45, 1.15}, {57, 0.6},  {76, 0.1},  {88, 0}};
    Readings readings;
    for (const auto& [note, gap] : gaps)
        readings[note] = {{"key-height", gap > 0 ? "gap " + typed(gap) : "0"},
                          {"key-dip", typed(8.9 + 1.24 * (1 - gap / 1.2))},
                          {"lost-motion", "0.2"},
                          {"blow", "46"},
                          {"let-off", note > 70 ? "2.1" : "3.0"},
                          {"checking", "15.5"}};
    for (const int note : {1, 20, 39, 42})
        readings[note]["damper-start"] = "21";
    readings[38]["sharp-height"] = "12.3";
    bench.read(readings);

    const json check = bench.check();
    CHECK(reading(check, 20, "key-height").at("value") == -0.6); // a gap means low
    const json cause = onlyCause(check);
    CHECK(cause.at("cause") == "sunk-balance-rail");
    CHECK(cause.at("checks") == json({"straightedge-on-rail", "three-felts-compared"}));

    const json plan = bench.plan();
    CHECK(asksFirst(plan, "straightedge-on-rail"));
    CHECK(asksFirst(plan, "three-felts-compared"));
    const auto rails = steps(plan, "balance-rail-shim");
    REQUIRE(rails.size() == 1);
    CHECK(steps(plan, "balance-punching").empty()); // never key by key
    const json& amounts = rails[0].at("amounts");
    CHECK(amounts.at("40").get<double>() == Approx(0.45).margin(0.01)); // 0.57 would be the lever of a grand
    CHECK(largestOf(rails[0]) == Approx(0.45).margin(0.01));
    CHECK(amounts.at("1").get<double>() == Approx(0).margin(0.02));
    CHECK(amounts.at("88").get<double>() == Approx(0).margin(0.02));
    CHECK(amounts.at("14").get<double>() < amounts.at("27").get<double>());
    CHECK(amounts.at("27").get<double>() < amounts.at("40").get<double>());
    CHECK(amounts.at("53").get<double>() > amounts.at("66").get<double>());
    CHECK(expected(plan, 39, "key-height").get<double>() == Approx(0).margin(0.03));
    CHECK(expected(plan, 39, "key-dip").get<double>() == Approx(10.1).margin(0.05));
    CHECK(expected(plan, 39, "lost-motion").get<double>() == Approx(0.1).margin(0.03));
    CHECK(expected(plan, 39, "aftertouch").get<double>() == Approx(1.4).margin(0.05));
    CHECK(staleAfter(plan) == std::set<std::string>{"key-height", "sharp-height", "key-dip", "lost-motion", "checking",
                                                    "damper-start"}); // and not the let-off
}

TEST_CASE("S2: filed hammers: keep the blow and bring let-off nearer, or pads, capstans, let-off, in that order") {
    // The scenario leaves the lost motion at 0.4 and lets the aftertouch go to 0.6; the upright sheet's limits of 0.4
    // and 0.7 would have the plan stop a little before either.
    const Folder desk;
    const std::string own = ownSheet(desk, "upright", {{"lost-motion", 0.1, 0.4, 0.7}, {"aftertouch", 0.4, 1.1, 1.6}});
    Bench bench(upright({"--spec", own}));
    Readings readings;
    for (int note = 1; note <= 88; ++note)
        readings[note] = {{"blow", "48"},
                          {"let-off", "5"},
                          {"checking", "17.5"},
                          {"key-dip", isNatural(note) ? "10" : "9.4"},
                          {"lost-motion", "0.4"}};
    for (const int note : {6, 12, 35, 40, 71})
        readings[note]["key-dip"] = isNatural(note) ? "9.1" : "8.5";
    for (int note = 81; note <= 88; ++note)
        readings[note]["felt-left"] = "1.4";
    bench.read(readings);
    bench.state("81-88 hammer-head watch");

    const json check = bench.check();
    const json cause = onlyCause(check);
    CHECK(cause.at("cause") == "hammers-filed");
    CHECK(cause.at("amount").get<double>() == Approx(2.0).epsilon(0.05));
    CHECK(cause.at("notes").size() == 88);
    for (const int note : {6, 12, 35, 40, 71})
        CHECK(reading(check, note, "key-dip").at("verdict") == "low");
    for (int note = 81; note <= 88; ++note)
        CHECK(reading(check, note, "felt-left").at("deviation").get<double>() < -1); // nothing may be filed off there

    const json kept = bench.plan({"--accept", "hammers-filed=keep-blow", "--intent", "full"});
    CHECK_FALSE(operationsOf(kept).contains("rest-rail-shim"));
    CHECK(steps(kept, "let-off-turn").size() == 88);
    for (const json& each : steps(kept, "let-off-turn"))
        CHECK(each.at("direction") == "out");
    // nearer by 2.0 where the aims are 3.2 and 2.9, with f/R of aftertouch the less
    CHECK(expected(kept, 20, "let-off").get<double>() == Approx(3.2).margin(0.01));
    CHECK(expected(kept, 30, "let-off").get<double>() == Approx(2.9).margin(0.01));
    CHECK(expected(kept, 20, "blow").get<double>() == Approx(48).margin(0.01));
    for (const int note : {20, 30})
        CHECK(expected(kept, note, "aftertouch").get<double>() == Approx(0.6).margin(0.05));

    const json restored = bench.plan({"--accept", "hammers-filed=restore-blow"});
    const json rail = step(restored, "rest-rail-shim:1-88");
    REQUIRE_FALSE(rail.is_null());
    CHECK(rail.at("amounts").at("1").get<double>() == Approx(1.56).margin(0.05));
    CHECK(rail.at("amounts").at("88").get<double>() == Approx(1.56).margin(0.05));
    CHECK(rail.at("direction") == "add");
    const json capstan = stepAt(restored, "capstan-turn", 20);
    REQUIRE_FALSE(capstan.is_null());
    CHECK(capstan.at("direction") == "anticlockwise");
    CHECK(capstan.at("at_part").get<double>() == Approx(0.22).margin(0.01)); // from 0.8 back to 0.4 of lost motion
    CHECK(steps(restored, "capstan-turn").size() == 88);
    CHECK(expected(restored, 20, "lost-motion").get<double>() == Approx(0.4).margin(0.02));
    CHECK(expected(restored, 20, "blow").get<double>() == Approx(46).margin(0.1));
    CHECK(expected(restored, 20, "aftertouch").get<double>() == Approx(1.0).margin(0.06));
    CHECK(rail.at("order") < capstan.at("order"));
    CHECK(capstan.at("order") < stepAt(restored, "let-off-turn", 20).at("order"));
    for (const int note : {6, 12, 35, 40, 71}) // the single faults stand beside the cause
        CHECK_FALSE(stepAt(restored, "front-punching", note).is_null());
}

TEST_CASE("S7: one half of the rest rail has lost its cushions, the other half is left alone") {
    Bench bench(upright(
        {"--spec", "old-upright", "--attribute", "rest-rail=1-44,45-88", "--attribute", "brackets=1,44;45,88"}));
    Readings readings;
    for (int note = 1; note <= 88; ++note) {
        const bool bass = note <= 44;
        readings[note] = {{"blow", bass ? "52" : "46"},
                          {"lost-motion", bass ? "0" : "0.3"},
                          {"let-off", "3"},
                          {"key-dip", "10"},
                          {"aftertouch", bass ? "0.2" : "1.1"}};
    }
    readings[1]["half-blow"] = "20";
    bench.read(readings, true); // the half-blow is short and asked about
    const json cause = onlyCause(bench.check());
    CHECK(cause.at("cause") == "rail-end-or-piece");
    const json plan = bench.plan();
    REQUIRE(steps(plan, "rest-rail-shim").size() == 1);
    const json rail = step(plan, "rest-rail-shim:1-44");
    REQUIRE_FALSE(rail.is_null());
    CHECK(rail.at("amounts").at("1").get<double>() == Approx(4.7).margin(0.02));
    CHECK(rail.at("amounts").at("44").get<double>() == Approx(4.7).margin(0.02));
    CHECK(rail.at("go") == 2); // at most 2 mm a go: three goes
    CHECK(std::ceil(rail.at("amount").get<double>() / rail.at("go").get<double>()) == 3);
    CHECK(steps(plan, "capstan-turn").size() == 44);
    const json capstan = stepAt(plan, "capstan-turn", 20);
    CHECK(capstan.at("at_part").get<double>() == Approx(0.49).margin(0.005));
    CHECK(rail.at("order") < capstan.at("order"));
    // The pads open M to 1.2; 0.49 mm at the capstan takes it back to the aim.
    CHECK(0.49 * 235 / 127 + expected(plan, 20, "lost-motion").get<double>() == Approx(1.2).margin(0.02));
    CHECK(expected(plan, 20, "aftertouch").get<double>() == Approx(1.1).margin(0.02));
    CHECK(expected(plan, 20, "blow").get<double>() == Approx(46).margin(0.02));
    CHECK(operationsOf(plan).contains("half-blow-rod"));
    // the rod alone is an order of the whole piano
    for (const auto& each : plan.at("steps"))
        for (const auto& note : each.at("notes"))
            if (each.at("operation") != "half-blow-rod") CHECK(note <= 44);
    for (const auto& each : plan.at("stale_after"))
        CHECK(each.at("note") <= 44);
}

TEST_CASE("S9: deep naturals first, sharps judged after") {
    Bench bench(upright());
    Readings readings;
    for (int note = 1; note <= 88; ++note)
        readings[note] =
            isNatural(note)
                ? std::map<std::string, std::string>{{"key-dip", "11.2"}, {"aftertouch", "1.9"}, {"checking", "15.5"}}
                : std::map<std::string, std::string>{
                      {"key-dip", "10.9"}, {"sharp-height", "12.0"}, {"sharp-proud", "1.1"}};
    bench.read(readings);
    const json plan = bench.plan();
    CHECK(steps(plan, "front-punching").size() == 52);
    const json paper = stepAt(plan, "front-punching", 40);
    CHECK(paper.at("direction") == "add");
    CHECK(paper.at("amount").get<double>() == Approx(0.79).margin(0.01));
    CHECK(expected(plan, 40, "key-dip").get<double>() == Approx(10.33).margin(0.02));
    CHECK(expected(plan, 40, "aftertouch").get<double>() == Approx(1.03).margin(0.02));
    CHECK(staleAfter(plan).contains("checking"));
    CHECK(staleAfter(plan).contains("aftertouch"));
    CHECK_FALSE(operationsOf(plan).contains("balance-punching"));
    for (const int note : notesOfSteps(plan)) // no raising of sharps while naturals are deep
        CHECK(isNatural(note));
}

TEST_CASE("S10: lost motion everywhere is one round of capstans") {
    Bench bench(upright({"--spec", "old-upright"}));
    Readings readings;
    for (int note = 1; note <= 88; ++note)
        readings[note] = {{"lost-motion", typed(2.2 + 0.1 * ((note - 40) % 4))}, // 1.9 to 2.5
                          {"blow", "46"},
                          {"let-off", "3"},
                          {"key-dip", isNatural(note) ? "9.8" : "9.6"},
                          {"checking", "16"}};
    for (const int note : {1, 26, 27, 52, 53, 70, 71, 88})
        readings[note]["capstan-reserve"] = "14";
    bench.read(readings);
    CHECK(onlyCause(bench.check()).at("cause") == "packed-cloths");
    CHECK(asksFirst(bench.plan(), "action-bolts"));
    bench.state("1-88 action-bolts sound"); // tight
    const json plan = bench.plan();
    CHECK_FALSE(asksFirst(plan, "action-bolts"));
    CHECK(steps(plan, "capstan-turn").size() == 88);
    CHECK_FALSE(operationsOf(plan).contains("back-rail-shim"));
    CHECK_FALSE(operationsOf(plan).contains("balance-rail-shim"));
    const json capstan = stepAt(plan, "capstan-turn", 40);
    CHECK(capstan.at("direction") == "anticlockwise");
    CHECK(capstan.at("at_part").get<double>() == Approx(1.03).margin(0.01));
    CHECK(capstan.at("stop_if") == "capstan-thread");
    CHECK(expected(plan, 40, "lost-motion").get<double>() == Approx(0.3).margin(0.02));
    CHECK(expected(plan, 40, "aftertouch").get<double>() == Approx(0.9).margin(0.02)); // from -1.0
    CHECK(staleAfter(plan).contains("checking"));                                      // nearer now
}

TEST_CASE("S10: where the thread runs out, back and balance rail are shimmed and the key front stays") {
    const auto shims = [](bool overridden) {
        const Folder desk;
        const std::string own = ownSheet(desk, "old-upright", {{"lost-motion", -0.4, 0, 0.4}});
        Bench bench(upright({"--spec", overridden ? own : "old-upright"}));
        Readings readings;
        for (int note = 1; note <= 88; ++note)
            readings[note] = {{"lost-motion", "3.2"},
                              {"blow", "46"},
                              {"let-off", "3"},
                              {"key-dip", isNatural(note) ? "10.2" : "9.6"},
                              {isNatural(note) ? "key-height" : "sharp-height", isNatural(note) ? "0" : "12"}};
        for (const int note : {1, 26, 27, 52, 53, 70, 71, 88})
            readings[note]["capstan-reserve"] = "7";
        bench.read(readings);
        bench.state("1-88 action-bolts sound");
        const json cause = onlyCause(bench.check());
        CHECK(cause.at("cause") == "low-key-backs");
        const json plan = bench.plan();
        for (const json& each : steps(plan, "capstan-turn")) // what the shims leave, not 1.73 mm
            CHECK(std::abs(each.at("at_part").get<double>()) < 0.2);
        REQUIRE(steps(plan, "back-rail-shim").size() == 1);
        REQUIRE(steps(plan, "balance-rail-shim").size() == 1);
        CHECK(expected(plan, 40, "key-height").get<double>() == Approx(0).margin(0.01));
        CHECK(cause.at("amount") == steps(plan, "back-rail-shim")[0].at("amount"));
        CHECK(cause.at("beside") == steps(plan, "balance-rail-shim")[0].at("amount"));
        return std::pair{cause.at("amount").get<double>(), cause.at("beside").get<double>()};
    };
    const auto [back, balance] = shims(true); // to an overridden aim of 0
    CHECK(back == Approx(1.80).margin(0.005));
    CHECK(balance == Approx(1.12).margin(0.005));
    const auto [toAim, besideIt] = shims(false); // to the old upright's 0.3
    CHECK(toAim == Approx(1.63).margin(0.005));
    CHECK(besideIt == Approx(1.02).margin(0.005));
}

TEST_CASE("the constructed files: one cause each in place of the single notes, the single faults beside it") {
    // truth.json of tests/reference/cases; the upright sheet and its default arms, 2.65 = (F + T)/T, k = 1.28
    const json truth = json::parse(readAll(reference("cases/truth.json")));
    const auto singles = [&](const std::string& file) {
        return truth.at(file).at("single_faults").begin().value().get<std::set<int>>();
    };
    {
        Bench bench({"--action", "upright"});
        bench.done("import", {reference("cases/filed_hammers.csv")});
        const json check = bench.check();
        const json cause = onlyCause(check);
        CHECK(cause.at("cause") == "hammers-filed");
        CHECK(cause.at("amount").get<double>() == Approx(2.0).epsilon(0.15));
        CHECK(cause.at("notes").size() == 88);
        CHECK(cause.at("replaces").get<int>() >= 88);
        const json plan = bench.plan();
        REQUIRE(steps(plan, "rest-rail-shim").size() == 1);
        CHECK(largestOf(steps(plan, "rest-rail-shim")[0]) == Approx(2.0 / 1.28).epsilon(0.15));
        CHECK(steps(plan, "rail-cloth-shim").empty());
        std::set<int> dips;
        for (const json& each : steps(plan, "front-punching"))
            dips.insert(each.at("note").get<int>());
        CHECK(dips == singles("filed_hammers.csv"));
        for (const int note : dips)
            // note 12, a sharp, lies 0.07 mm from its edge: worked, but no single reading can call it low
            CHECK(reading(check, note, "key-dip").at("verdict") == (note == 12 ? "undecided" : "low"));
    }
    {
        Bench bench({"--action", "upright"});
        bench.done("import", {reference("cases/sunk_rail.csv")});
        const json check = bench.check();
        const json cause = onlyCause(check);
        CHECK(cause.at("cause") == "sunk-balance-rail");
        CHECK(cause.at("amount").get<double>() == Approx(1.19 / 2.65).epsilon(0.15));
        const json plan = bench.plan();
        REQUIRE(steps(plan, "balance-rail-shim").size() == 1);
        CHECK(largestOf(steps(plan, "balance-rail-shim")[0]) == Approx(1.19 / 2.65).epsilon(0.15));
        CHECK(steps(plan, "balance-punching").size() < 9); // what the taper leaves, not the 88
        for (const int note : singles("sunk_rail.csv")) {
            CHECK(reading(check, note, "let-off").at("verdict") == "low");
            CHECK(stepAt(plan, "let-off-turn", note).at("direction") == "in");
        }
    }
    Bench grand({"--action", "grand", "--sections", "1-20,21-41,42-62,63-88"});
    grand.done("import", {reference("cases/grand_samples.tsv")});
    CHECK(grand.check().at("causes").empty());
    Bench player({"--action", "upright", "--notes", "85", "--player"});
    player.done("import", {reference("cases/player_85_slips.csv")});
    CHECK(player.check().at("causes").empty());
}
