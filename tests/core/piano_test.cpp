#include "core/pass/pass.h"

#include <catch2/catch.hpp>

using namespace hammerline;

namespace {
Piano piano(ActionKind kind = ActionKind::upright, int notes = 88) {
    return *makePiano(kind, notes);
}
int count(const Piano& p, KeyColour colour) {
    int n = 0;
    for (int i = 1; i <= p.notes; ++i)
        n += colourOf({i}, p) == colour;
    return n;
}
} // namespace

TEST_CASE("88 notes are 52 naturals and 36 sharps, 85 are 50 and 35") {
    // Counting on the keyboard; common practice, no source needed.
    CHECK(count(piano(), KeyColour::natural) == 52);
    CHECK(count(piano(), KeyColour::sharp) == 36);
    CHECK(count(piano(ActionKind::upright, 85), KeyColour::natural) == 50);
    CHECK(count(piano(ActionKind::upright, 85), KeyColour::sharp) == 35);
}

TEST_CASE("a compass outside 20 to 108 notes or beyond MIDI is refused") {
    CHECK(makePiano(ActionKind::upright, 19).error().code == RefusalCode::badCompass);
    CHECK(makePiano(ActionKind::upright, 109).error().code == RefusalCode::badCompass);
    CHECK(makePiano(ActionKind::upright, 88, 60).error().code == RefusalCode::badCompass);
    CHECK(makePiano(ActionKind::upright, 108, 12).has_value());
}

TEST_CASE("the presets differ where the actions differ") {
    CHECK(piano(ActionKind::drop).capstan == Capstan::dropButton);
    CHECK(piano(ActionKind::drop).keys == KeysFixing::hooked);
    CHECK(piano(ActionKind::grand).damping == Damping::grandLever);
    // Lever (F+T)/T of the default arms; common practice, no source: 2.65 upright, 2.11 grand.
    CHECK(piano().armsOf(KeyColour::natural).lever() == Approx(2.65).margin(0.01));
    CHECK(piano(ActionKind::grand).armsOf(KeyColour::natural).lever() == Approx(2.11).margin(0.01));
}

TEST_CASE("sharps with their own pin row answer about 1.07 times more") {
    const Piano p = piano();
    CHECK(defaultRatio(p, KeyColour::sharp) / defaultRatio(p, KeyColour::natural) == Approx(1.08).margin(0.015));
}

TEST_CASE("every note is in a section, entered or customary") {
    for (const int notes : {20, 49, 85, 88, 108}) {
        const auto made = makePiano(ActionKind::upright, notes, 12);
        REQUIRE(made);
        int next = 1;
        for (const Section& s : sectionsOf(*made)) {
            CHECK(s.range.first == next);
            next = s.range.last + 1;
        }
        CHECK(next == notes + 1);
    }
    const auto usual = sectionsOf(piano());
    REQUIRE(usual.size() == 4);
    CHECK(usual[0].range == NoteRange{1, 26});
    CHECK(usual[1].range == NoteRange{27, 52});
    CHECK(usual[2].range == NoteRange{53, 70});
    CHECK(usual[3].range == NoteRange{71, 88});
}

TEST_CASE("attributes by name: set, refused, and back unchanged") {
    Piano p = piano();
    for (const auto& [name, value] :
         std::vector<std::pair<std::string, std::string>>{{"capstan", "rocker"},
                                                          {"butt", "brass-rail"},
                                                          {"player", "above"},
                                                          {"rest-rail", "1-44,45-88"},
                                                          {"brackets", "1,22,44;45,88"},
                                                          {"sections", "1-28 Bass,29-58 Tenor,59-88"},
                                                          {"last-damper", "66"},
                                                          {"balance-screws", "1,14,27,40"},
                                                          {"arms-natural", "243.29,222,142,127"},
                                                          {"rest-rail-factor", "1.3"},
                                                          {"ratio-natural", "5"},
                                                          {"stock", "0.003in,0.1mm"},
                                                          {"gauge-let-off", "good"},
                                                          {"capstan-reserve", "14"},
                                                          {"capstan-up", "clockwise"},
                                                          {"let-off-in", "anticlockwise"},
                                                          {"minutes-let-off-turn", "0,7"},
                                                          {"minutes-stack-out", "95"}})
        REQUIRE(setAttribute(p, name, value));
    CHECK(p.brackets.size() == 2);
    CHECK(p.stock.front().nm == 76'200);
    Piano again = piano();
    for (const auto& [name, value] : attributePairs(p))
        REQUIRE(setAttribute(again, name, value));
    CHECK(again == p);

    // Nothing said takes back what was said, and only that.
    for (const auto& [name, value] : attributePairs(p)) {
        Piano without = p;
        REQUIRE(setAttribute(without, name, ""));
        const auto left = attributePairs(without);
        if (name != "brackets") // those of two pieces are not those of one
            CHECK(std::none_of(left.begin(), left.end(), [&](const auto& each) { return each.first == name; }));
        if (name != "brackets" && name != "rest-rail") CHECK(left.size() + 1 == attributePairs(p).size());
        CHECK(without.name == p.name);
    }
    CHECK(setAttribute(p, "rope", "").error().code == RefusalCode::unknownAttribute);

    CHECK(setAttribute(p, "minutes-polish", "3").error().code == RefusalCode::unknownAttribute);
    CHECK(setAttribute(p, "minutes-let-off-turn", "0").error().code == RefusalCode::badAttribute);
    CHECK(setAttribute(p, "minutes-let-off-turn", "601").error().code == RefusalCode::badAttribute);
    CHECK(setAttribute(p, "capstan-up", "left").error().code == RefusalCode::badAttribute);
    CHECK(setAttribute(p, "capstan", "rope").error().code == RefusalCode::badAttribute);
    CHECK(setAttribute(p, "colour", "brown").error().code == RefusalCode::unknownAttribute);
    CHECK(setAttribute(p, "sections", "1-26,28-88").error().code == RefusalCode::badSections);
    CHECK(setAttribute(p, "brackets", "1,44").error().code == RefusalCode::badAttribute);
    CHECK(setAttribute(p, "arms-natural", "200,210,142,127").error().code == RefusalCode::badAttribute);
    CHECK(setAttribute(p, "ratio-natural", "nan").error().code == RefusalCode::badAttribute);
}

TEST_CASE("sections and rail pieces are typed by their breaks or their ranges") {
    Piano byBreaks = piano(ActionKind::upright), byRanges = byBreaks;
    REQUIRE(setAttribute(byBreaks, "sections", "28, 58"));
    REQUIRE(setAttribute(byRanges, "sections", "1\u201328 | 29\u201358 | 59\u201388"));
    CHECK(byBreaks.sections == byRanges.sections);
    CHECK(byBreaks.sections.back().range == NoteRange{59, 88});
    for (const char* wrong : {"58, 28", "0, 28", "28, 88, 89", "28,,58", ""}) {
        Piano tried = piano(ActionKind::upright);
        CAPTURE(wrong);
        const auto said = setAttribute(tried, "sections", wrong);
        CHECK((std::string_view(wrong).empty() ? said.has_value() : said.error().code == RefusalCode::badSections));
    }
    REQUIRE(setAttribute(byBreaks, "rest-rail", "44"));
    CHECK(byBreaks.restRail == std::vector<NoteRange>{{1, 44}, {45, 88}});

    // The brackets of both pieces in one line are those of each piece.
    REQUIRE(setAttribute(byBreaks, "brackets", "1, 20, 44, 45, 88"));
    CHECK(byBreaks.brackets == std::vector<std::vector<int>>{{1, 20, 44}, {45, 88}});
    CHECK(setAttribute(byBreaks, "brackets", "1, 44, 88").error().code == RefusalCode::badAttribute);
    CHECK(setAttribute(byBreaks, "last-damper", "200").error().detail == "0..88");
}

TEST_CASE("an arm that was not measured stays as is customary") {
    Piano p = piano(ActionKind::upright);
    const KeyArms usual = p.armsOf(KeyColour::natural);
    REQUIRE(setAttribute(p, "arms-natural", "238,,140,126"));
    const KeyArms& arms = p.armsOf(KeyColour::natural);
    CHECK(arms.front == fromMm(238));
    CHECK(arms.frontPin == usual.frontPin);
    CHECK(arms.measured == std::array{true, false, true, true});
    Piano again = piano(ActionKind::upright);
    for (const auto& [name, value] : attributePairs(p))
        REQUIRE(setAttribute(again, name, value));
    CHECK(again == p);
    // The front edge before the customary front pin is a contradiction to be told, not to be kept.
    CHECK(setAttribute(p, "arms-natural", "200,,140,126").error().code == RefusalCode::badAttribute);
    REQUIRE(setAttribute(p, "arms-natural", ",,,"));
    CHECK(!p.armsOf(KeyColour::natural).anyMeasured());
    CHECK(attributePairs(p).empty());
}

TEST_CASE("what a piano has not is not asked of it") {
    const Piano upright = piano(ActionKind::upright), grand = piano(ActionKind::grand);
    for (const char* name : {"butt", "player", "rest-rail", "brackets", "keys"}) {
        CAPTURE(name);
        CHECK(concerns(name, upright));
        CHECK(!concerns(name, grand));
    }
    CHECK(concerns("drop-in", grand));
    CHECK(!concerns("drop-in", upright));
    CHECK(!concerns("player-works", upright));
    Piano player = upright;
    player.player = PlayerStack::above;
    CHECK(concerns("player-works", player));

    // What a kind is made with can be met on it.
    for (const auto kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand}) {
        const Piano preset = piano(kind);
        CHECK(possible("damping", kind == ActionKind::grand ? "grand-lever" : "underdamper", preset));
        CHECK(possible("capstan", "drop-button", preset) == (kind == ActionKind::drop));
    }
    CHECK(!possible("damping", "grand-lever", upright));
}

TEST_CASE("a preset piano has no attribute pairs") {
    for (const auto kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand})
        CHECK(attributePairs(piano(kind)).empty());
}

TEST_CASE("which notes have a dimension") {
    Piano p = piano();
    p.lastDamper = 66;
    CHECK(fitted(dimension::damperStart, {66}, p));
    CHECK_FALSE(fitted(dimension::damperStart, {67}, p));
    CHECK(fitted(dimension::keyHeight, {1}, p));
    CHECK_FALSE(fitted(dimension::keyHeight, {2}, p));
    CHECK(fitted(dimension::sharpHeight, {2}, p));
    CHECK_FALSE(fitted(dimension::drop, {1}, p));
    CHECK_FALSE(fitted(dimension::playerClearance, {1}, p));
    CHECK(fitted(dimension::drop, {1}, piano(ActionKind::grand)));
    CHECK_FALSE(fitted(dimension::lostMotion, {1}, piano(ActionKind::grand)));
}

TEST_CASE("the catalogue is consistent: every row at its place, doubt band inside the range, words known") {
    for (const Dimension& d : dimensions()) {
        CHECK(&row(d.id) == &d);
        CHECK(*findDimension(d.key) == d.id);
        CHECK(d.refuseLow <= d.askLow);
        CHECK(d.askLow <= d.askHigh);
        CHECK(d.askHigh <= d.refuseHigh);
        CHECK(d.u[0] >= d.u[1]);
        CHECK(d.u[1] >= d.u[2]);
        for (const WordId w : d.words)
            CHECK(*findWord(row(w).key, d.id) == w);
    }
    CHECK(*findWord("off", dimension::lostMotion) == word::offRail);
    CHECK(*findWord("No let-off", dimension::letOff) == word::noLetOff);
    CHECK(findWord("torn", dimension::letOff).error().code == RefusalCode::unknownWord);
}

TEST_CASE("the value of a cell is the mean of its trials, without words and inequalities") {
    Reading first;
    first.count = 3'000'000;
    Reading second = first;
    second.count = 3'000'001;
    second.trial = 2;
    Measured m;
    CHECK_FALSE(m.value());
    m.trials = {first, second};
    CHECK(m.value() == 3'000'001); // half away from zero
    Reading more = first;
    more.count = 9'000'000;
    more.relation = Relation::more;
    m.trials.push_back(more);
    CHECK(m.value() == 3'000'001);
    Reading blocks;
    blocks.word = word::blocks;
    m.trials = {blocks};
    CHECK_FALSE(m.value());
    CHECK(m.word() == word::blocks);
}

TEST_CASE("walking orders leave out what is not fitted") {
    const Piano p = piano();
    const std::array asked = {dimension::keyHeight, dimension::sharpHeight, dimension::keyDip};
    CHECK(walk(WalkOrder::up, p, asked, 1, true, {}).size() == 88 + 88);
    const auto colours = walk(WalkOrder::naturalsThenSharps, p, std::array{dimension::keyDip}, 1, false, {});
    CHECK(colourOf(colours[51].note, p) == KeyColour::natural);
    CHECK(colourOf(colours[52].note, p) == KeyColour::sharp);
    // Ends of every section as sample notes: a technicians' digest of December 1996.
    Piano sections = p;
    REQUIRE(setAttribute(sections, "sections", "1-26,27-60,61-88"));
    const auto ends = walk(WalkOrder::sectionEnds, sections, std::array{dimension::blow}, 1, false, {});
    std::vector<int> notes;
    for (const Cell& c : ends)
        notes.push_back(c.note.value);
    CHECK(notes == std::vector{1, 26, 27, 60, 61, 88});
}
