// What the set-up says of a piano and its readings are reckoned by: the crown of its key line and the length of its
// capstan screws. A crown of 0.5 to 1 mm in the middle is customary (chlorispiano.com, display 1075: 1 mm; list post
// 2001-Nov/097385: 1/32 in), others call it needless (2001-Nov/097200) or match what is there (2010-Oct/029183).
#include "core/intake/intake.h"
#include "core/judge/judge.h"
#include "core/judge/key_line.h"
#include "core/reserve/reserve.h"
#include "core/sheet/pass_view.h"
#include "tests/core/scene.h"

using namespace hammerline;
using scene::Scene;

namespace {

/// Naturals over the bed on a line that rises by `crown` mm at the middle: 60 mm at the ends.
Pass crowned(const Piano& piano, double crown) {
    Pass pass;
    pass.number = 1;
    pass.references[dimension::keyHeight] = "bed";
    for (int n = 1; n <= piano.notes; ++n) {
        if (colourOf({n}, piano) == KeyColour::sharp) continue;
        const double half = (piano.notes - 1) / 2.0, away = (n - 1 - half) / half;
        Reading reading;
        reading.count = fromMm(60 + crown * (1 - away * away)).nm;
        pass.cells[{{n}, dimension::keyHeight}].trials = {reading};
    }
    return pass;
}

double heightAt(const Piano& piano, const Pass& pass, int note) {
    return toTrade(*withRelativeHeights(piano, pass).value({{note}, dimension::keyHeight}), Kind::length);
}

} // namespace

TEST_CASE("a key line is judged by the crown that the set-up says, and by none where it is straight") {
    Piano piano = *makePiano(ActionKind::upright);
    const Pass pass = crowned(piano, 1.0);
    // A line hidden under a straight one stands high in the middle and low at its ends.
    REQUIRE(setAttribute(piano, "crown", "straight"));
    CHECK(heightAt(piano, pass, 44) - heightAt(piano, pass, 1) == Approx(1.0).margin(0.01));
    REQUIRE(setAttribute(piano, "crown", "1 mm"));
    for (const int note : {1, 20, 44, 64, 88})
        CHECK(heightAt(piano, pass, note) == Approx(0).margin(0.002));
    // As found: a crown up to 0.8 mm is taken as the maker's by itself.
    REQUIRE(setAttribute(piano, "crown", "as-found"));
    for (const int note : {1, 44, 88})
        CHECK(heightAt(piano, crowned(piano, 0.7), note) == Approx(0).margin(0.02));
    CHECK_FALSE(setAttribute(piano, "crown", "3 mm"));
    CHECK_FALSE(setAttribute(piano, "crown", "-1 mm"));
}

TEST_CASE("a line with a crown that is said keeps its tilt and its low keys") {
    std::vector<NaturalHeight> keys;
    for (int i = 0; i <= 51; ++i) {
        const double place = i / 51.0;
        keys.push_back({place, 2 * (place - 0.5) + 1.2 * 4 * place * (1 - place) - (i == 20 ? 0.6 : 0)});
    }
    const KeyLine line = fitKeyLine(keys, 1.2);
    CHECK(line.crown == Approx(1.2));
    CHECK(line.tilt == Approx(2).margin(0.02));
    CHECK(keys[20].height - line.at(keys[20].place) == Approx(-0.6).margin(0.02));
}

TEST_CASE("what stands out of the key is thread in the wood only once the screw's length is known") {
    // Both figures stand side by side in a list post (from memory of an earlier reading): what stands out is no
    // reserve.
    Scene scene(scene::upright(), "upright");
    Pass& pass = scene.pass();
    pass.references[dimension::capstanReserve] = "standing-out";
    Reading reading;
    reading.count = fromMm(14).nm;
    pass.cells[{{27}, dimension::capstanReserve}].trials = {reading};
    const auto seen = [&] {
        return withRelativeHeights(scene.record.piano, pass).value({{27}, dimension::capstanReserve});
    };
    const auto left = [&] {
        const auto all = reservesAt(scene.record, scene.zones(), {27});
        return *std::ranges::find(all, ReserveOf::capstanThread, &Reserve::of);
    };
    CHECK(needsConversion(pass));
    CHECK_FALSE(seen());
    CHECK(left().toRead == dimension::capstanReserve);
    REQUIRE(setAttribute(scene.record.piano, "capstan-length", "32 mm"));
    CHECK(*seen() == fromMm(18).nm);
    CHECK_FALSE(left().toRead);
    REQUIRE(left().left);
    CHECK(*left().left == Approx(18 - 8)); // over the 8 mm that must hold
    pass.references.erase(dimension::capstanReserve);
    CHECK(*seen() == fromMm(14).nm); // as it was meant before: in the wood
}

TEST_CASE("a word that a dimension does not have is refused with those it has") {
    const auto refused = findWord("crooked", dimension::hammerSquare);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().detail == "right|top-leans-to-the-bass|top-leans-to-the-treble");
    for (const Dimension& each : dimensions()) {
        if (!each.wordsOnly) continue;
        INFO(each.key);
        CHECK_FALSE(wordsAllowed(each.id).empty());
    }
    CHECK(wordsAllowed(dimension::keyDip).find("|") == std::string::npos);
}

TEST_CASE("sections break at pitches: keys outside 88 are added to the ends") {
    // Common practice, no source: the break belongs to strings and plate.
    struct Compass {
        int notes, lowest;
        std::vector<int> lastOfSections;
    };
    for (const auto& [notes, lowest, last] :
         {Compass{85, 21, {26, 52, 70, 85}}, Compass{88, 21, {26, 52, 70, 88}}, Compass{90, 19, {28, 54, 72, 90}},
          Compass{92, 17, {30, 56, 74, 92}}, Compass{97, 12, {35, 61, 79, 97}}}) {
        std::vector<int> found;
        for (const Section& section : sectionsOf(*makePiano(ActionKind::upright, notes, lowest)))
            found.push_back(section.range.last);
        INFO(notes);
        CHECK(found == last);
    }
}

TEST_CASE("a repeat in another unit, or far from what was read before, is asked about") {
    const Piano piano = *makePiano(ActionKind::upright);
    const Cell cell{{40}, dimension::blow};
    const auto typed = [&](const char* text) {
        EntryContext around;
        around.piano = &piano;
        return *readEntry(text, cell, around)->sound;
    };
    Measured before;
    before.trials = {typed("46")};
    CHECK_FALSE(askAboutRepeat(cell, typed("46.5"), before, piano));
    const auto inches = askAboutRepeat(cell, typed("1 13/16 in"), before, piano); // 46.04 mm
    REQUIRE(inches);
    CHECK(inches->slip == "repeat-unit");
    const auto far = askAboutRepeat(cell, typed("52"), before, piano);
    REQUIRE(far);
    CHECK(far->slip == "repeat-far");
    CHECK(far->mayTake);
    CHECK_FALSE(askAboutRepeat(cell, typed("52"), Measured{}, piano));
}

TEST_CASE("what no note of a section does is one cause, with words as with numbers") {
    Scene scene(scene::upright(), "upright");
    Pass& pass = scene.pass();
    const auto say = [&](int from, int to, DimensionId id, WordId word) {
        for (int n = from; n <= to; ++n) {
            Reading reading;
            reading.word = word;
            pass.cells[{{n}, id}].trials = {reading};
        }
    };
    const auto caused = [&](std::string_view key) {
        const auto view = viewPass(scene.record, 1);
        REQUIRE(view);
        const auto found = std::ranges::find(view->causes, key, &Cause::key);
        return found == view->causes.end() ? 0 : static_cast<int>(found->notes.size());
    };
    say(27, 52, dimension::checking, word::doesNotCheck);
    CHECK(caused("section-block") == 26);
    say(1, 26, dimension::checking, word::ok);
    CHECK(caused("section-block") == 26);
    say(1, 12, dimension::checking, word::doesNotCheck); // here and there as well: no block
    CHECK(caused("section-block") == 0);
    say(53, 70, dimension::letOff, word::noLetOff);
    CHECK(caused("loose-let-off-rail") == 18);
}
