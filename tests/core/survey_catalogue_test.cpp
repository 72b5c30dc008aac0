#include "tests/core/survey_bench.h"

#include <set>

using namespace hammerline;
using namespace hammerline::survey_bench;

TEST_CASE("the seventy parts stand in the order of the page, each with faults, remedies and a usual remedy") {
    REQUIRE(parts().size() == 70);
    std::set<std::string_view> keys;
    int number = 0;
    for (const Part& part : parts()) {
        INFO(part.key);
        CHECK(part.number == ++number);
        CHECK(keys.insert(part.key).second);
        REQUIRE(!part.faults.empty());
        REQUIRE(!part.remedies.empty());
        std::set<std::string_view> faults;
        for (const Fault& f : part.faults) {
            INFO(f.key);
            CHECK(faults.insert(f.key).second);
            CHECK(findRemedy(part, f.usualRemedy) != nullptr);
        }
        for (const auto word : part.mustIf)
            CHECK((findFault(part, word) || findRemedy(part, word)));
        CHECK(part.minutes[0] <= part.minutes[1]);
    }
    // Ids named in the command line's page.
    for (const auto key : {"action-bolts", "bridle-strap", "hammer-head", "let-off-screw", "damper-felt-split-wedge",
                           "strings-soundboard", "player-stop-rail", "moth-rust"})
        CHECK(findPart(key));
}

TEST_CASE("parts that the kind or the set-up does not have are not fitted") {
    const auto has = [](std::string_view part, const Piano& p) { return fitted(*findPart(part), p); };
    Piano upright = pianoOf(ActionKind::upright);
    CHECK_FALSE(has("butt-plate", upright));
    CHECK_FALSE(has("brass-flange-rail", upright));
    set(upright, "butt", "brass-rail");
    CHECK(has("butt-plate", upright));
    CHECK(has("capstan", upright));
    CHECK_FALSE(has("rocker", upright));
    set(upright, "capstan", "rocker");
    CHECK(has("rocker", upright));
    CHECK_FALSE(has("capstan", upright));
    CHECK_FALSE(has("player-stack", upright));
    set(upright, "player", "above");
    CHECK(has("player-stack", upright));
    set(upright, "damping", "overdamper");
    CHECK(has("overdamper", upright));
    // No spoon operation on overdampers and grands (situation 56: a training site on upright dampers).
    CHECK_FALSE(has("spoon", upright));
    const Piano grand = pianoOf(ActionKind::grand);
    for (const auto part : {"drop-screw", "repetition-lever", "knuckle", "damper-underlever", "rest-felt"}) {
        CHECK(has(part, grand));
        CHECK_FALSE(has(part, upright));
    }
    for (const auto part : {"spoon", "bridle-strap", "rest-rail-cushions", "lifter"})
        CHECK_FALSE(has(part, grand));
    CHECK(has("lifter", pianoOf(ActionKind::drop)));
    CHECK_FALSE(has("capstan", pianoOf(ActionKind::drop)));
}

TEST_CASE("damper parts end at the last damper") {
    const Piano piano = playerUpright();
    CHECK(fitted(*findPart("damper-lever"), NoteNumber{66}, piano));
    CHECK_FALSE(fitted(*findPart("damper-lever"), NoteNumber{67}, piano));
    CHECK(notesOf(*findPart("damper-lever"), piano).size() == 66);
    CHECK(notesOf(*findPart("jack"), piano).size() == 85);
}

TEST_CASE("what a remedy disturbs goes stale, and only there") {
    const Piano piano = pianoOf(ActionKind::upright);
    const auto cells = [&](std::string_view typed) {
        std::set<std::pair<int, std::string_view>> out;
        const auto found = parseFindings(typed, piano);
        REQUIRE(found);
        for (const Finding& f : *found)
            for (const Cell& c : disturbedBy(f, piano))
                out.insert({c.note.value, key(c.dimension)});
        return out;
    };
    // Filed hammers: blow, let-off, checking (and the felt left over the wood).
    CHECK(
        cells("20 hammer-head hammers-filed 2.0") ==
        std::set<std::pair<int, std::string_view>>{{20, "blow"}, {20, "let-off"}, {20, "checking"}, {20, "felt-left"}});
    // A back-rail strip lies under the whole keyboard; sharps are read over the naturals.
    const auto strip = cells("1-88 back-rail-cloth putty");
    CHECK(strip.contains({1, "key-height"}));
    CHECK(strip.contains({88, "lost-motion"}));
    CHECK_FALSE(strip.contains({2, "key-height"}));
    CHECK(strip.contains({2, "sharp-height"}));
    CHECK_FALSE(strip.contains({1, "let-off"}));
    // What is left alone disturbs nothing.
    CHECK(cells("20 let-off-screw seized leave").empty());
    CHECK_FALSE(cells("20 damper-lever-spring weak").contains({20, "blow"}));
}

TEST_CASE("bushings are a must only once more than a tenth of a set is faulty") {
    const Piano piano = pianoOf(ActionKind::upright);
    std::vector<Finding> findings;
    add(findings, "1-8 front-bushing loose", piano); // 8 of 88 is 9.1 per cent
    CHECK(blockedNotes(findings, piano).empty());
    add(findings, "9 front-bushing loose", piano); // 9 of 88 is 10.2 per cent
    CHECK(blockedNotes(findings, piano).size() == 88);
}
