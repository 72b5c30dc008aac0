// Account, stroke and drawing tell one story, to the last shown digit, over 200 worn virtual pianos of five kinds:
// three routes to the same figures (a sum of shares, places on the key's way, links that turn about their centres);
// after the plan likewise, and then with what the plan itself expects. The demo and the case files:
// tests/end_to_end/action_test.
#include "core/sheet/note_action.h"
#include "core/stroke/moments.h"
#include "tests/virtual_action/action.h"

#include <catch2/catch.hpp>

#include "scene.h"
#include <array>

using namespace hammerline;
using virtual_action::Action;

namespace {

constexpr int kWornPianos = 200;
constexpr double kShownDigit = 0.005; // half of what two decimals show
constexpr double kDrawnWithin = 0.05; // mm: what a drawing may miss a reading by
constexpr int kPlanned = 10;          // every tenth piano is planned as well

struct KindOfPiano {
    ActionKind kind = ActionKind::upright;
    std::string_view sheet = "upright";
    Damping damping = Damping::underdamper;
};
constexpr std::array kKindsOfPiano{
    KindOfPiano{}, KindOfPiano{.sheet = "old-upright"}, KindOfPiano{.kind = ActionKind::drop, .sheet = "drop"},
    KindOfPiano{.damping = Damping::overdamper}, KindOfPiano{.kind = ActionKind::grand, .sheet = "grand"}};

/// Every reading of a worn piano by a gauge that reads tenths.
PianoRecord bookOf(const Action& action, const SpecSheet& sheet) {
    PianoRecord record;
    record.piano = action.piano();
    record.specName = sheet.name;
    Pass pass;
    pass.number = 1;
    const std::array asked{dimension::keyDip, dimension::lostMotion, dimension::blow,     dimension::letOff,
                           dimension::drop,   dimension::aftertouch, dimension::checking, dimension::damperStart};
    for (int n = 1; n <= record.piano.notes; ++n)
        for (const DimensionId id : asked) {
            const auto truth = action.truth({{n}, id});
            if (!truth || !fitted(id, {n}, record.piano)) continue;
            Reading reading;
            reading.count = fromTrade(std::round(*truth * 10) / 10, Kind::length);
            pass.cells[{{n}, id}].trials = {reading};
        }
    record.passes.push_back(pass);
    return record;
}

/// The drawn damper stirs when the hammer has come as far as was read.
void checkDamper(const DrawnNote& drawn) {
    const kinematics::Distances& mm = drawn.linkage.distances();
    const double stirs = travelAt(drawn, Moment::damper);
    if (stirs >= std::min(mm.dip, mm.escapeAt)) return; // later than the key goes
    CHECK(mm.blow - drawn.linkage.at(stirs).gap == Approx(mm.damperStart).margin(kDrawnWithin));
}

void checkDrawing(const DrawnNote& drawn, const DipAccount& account, const Stroke& stroke) {
    const kinematics::Linkage& linkage = drawn.linkage;
    const kinematics::Distances& mm = linkage.distances();
    CHECK(mm.escapeAt == Approx(*stroke.letOff).margin(kShownDigit));
    CHECK(travelAt(drawn, Moment::bottom) == Approx(*stroke.bottom).margin(kShownDigit));
    CHECK(linkage.at(0).gap == Approx(mm.blow).margin(kDrawnWithin));
    if (stroke.damperStirs && drawn.damperStirs) checkDamper(drawn);
    if (mm.escapeAt >= mm.dip) return; // the jack stays; nothing falls
    CHECK(linkage.at(mm.escapeAt - 1e-9).gap == Approx(mm.letOff).margin(kDrawnWithin));
    CHECK(mm.dip - mm.escapeAt == Approx(*account.computed).margin(kShownDigit));
}

struct Counted {
    int notes = 0, drawn = 0;
};

/// One note's three tellings, from one table of readings.
void checkNote(const Piano& piano, const PassTable& table, const Zones& zones, const DipAccount& account,
               const Stroke& stroke, Counted& counted) {
    if (!account.computed) return;
    REQUIRE(stroke.aftertouch);
    ++counted.notes;
    CHECK(*stroke.aftertouch == Approx(*account.computed).margin(1e-6));
    CHECK(*stroke.bottom - *stroke.letOff == Approx(*account.computed).margin(1e-6));
    const auto drawn = drawnNote(piano, table, zones, account.ratio, account.note);
    if (!drawn) return; // refused by name; the share of them is held by the cases below
    ++counted.drawn;
    checkDrawing(*drawn, account, stroke);
}

double at(const Plan& plan, Cell cell) {
    const auto found = std::ranges::find(plan.expected, cell, &Expected::cell);
    return found == plan.expected.end() ? -1 : found->value;
}

/// What the plan expects stands in the terms of the account after it, as it is.
void checkPlanned(const Plan& plan, const NoteAction& note, int& expected) {
    REQUIRE(note.accountAfter);
    for (const DipTerm& term : note.accountAfter->terms) {
        const double value = at(plan, {note.note, term.dimension});
        if (value < 0 || !term.reading) continue;
        ++expected;
        CHECK(*term.reading == Approx(value).margin(kShownDigit));
    }
}

} // namespace

TEST_CASE("account, stroke and drawing agree over 200 virtual pianos, and after the plan with the plan") {
    Counted asRead, after;
    int expected = 0;
    for (int i = 0; i < kWornPianos; ++i) {
        const KindOfPiano& kind = kKindsOfPiano[static_cast<std::size_t>(i) % kKindsOfPiano.size()];
        const SpecSheet sheet = *builtInSheet(kind.sheet);
        Piano piano = *makePiano(kind.kind);
        piano.damping = kind.damping;
        const Action action(piano, sheet, {.share = 0.3 + 0.2 * (i / 5 % 5)}, 1000 + static_cast<std::uint64_t>(i));
        const PianoRecord record = bookOf(action, sheet);
        const auto view = viewPass(record, 1);
        REQUIRE(view);
        std::optional<Plan> plan;
        if (i % kPlanned == i / kPlanned % kPlanned) plan = *makePlan(record, sheet, 1, {});
        const ActionReckoning reckoning(record, *view, plan ? &*plan : nullptr);
        const PassTable table(record.piano, view->pass);
        const PassTable tableAfter(record.piano, plan ? *reckoning.after() : view->pass);
        for (int n = 1 + i % 7; n <= record.piano.notes; n += 7) {
            const NoteAction note = reckoning.at({n});
            INFO("piano " << i << ", note " << n);
            checkNote(record.piano, table, reckoning.zones(), note.account, note.stroke, asRead);
            if (!note.accountAfter) continue;
            INFO("after the plan");
            checkNote(record.piano, tableAfter, reckoning.zones(), *note.accountAfter, *note.strokeAfter, after);
            checkPlanned(*plan, note, expected);
        }
    }
    CHECK(asRead.notes > 2000);
    CHECK(asRead.drawn > asRead.notes * 95 / 100); // worn, but pianos: nearly all can be drawn
    CHECK(after.notes > 100);
    CHECK(after.drawn > after.notes * 95 / 100);
    CHECK(expected > 100);
}

TEST_CASE("what was not read is drawn at its aim and named") {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::upright);
    record.specName = "upright";
    Pass pass;
    pass.number = 1;
    record.passes.push_back(pass);
    const auto view = viewPass(record, 1);
    REQUIRE(view);
    const ActionReckoning reckoning(record, *view, nullptr);
    const PassTable table(record.piano, view->pass);
    const auto drawn = drawnNote(record.piano, table, reckoning.zones(), reckoning.ratioOf({40}), {40});
    REQUIRE(drawn);
    const auto named = [&](DimensionId id) {
        return std::find(drawn->atAim.begin(), drawn->atAim.end(), id) != drawn->atAim.end();
    };
    CHECK(named(dimension::blow));
    CHECK(named(dimension::letOff));
    CHECK(named(dimension::keyDip));
    CHECK_FALSE(drawn->checks);
}

// A hammer off its rail has no way to lose and a note that blocks stands at the string: words that were read are not
// drawn at the aim. One that never lets off cannot have a dip that is enough for it: 46/4.9 = 9.4 of 10.2.
TEST_CASE("what was read in words is drawn as account and stroke take it") {
    scene::Scene scene(scene::withRatio(scene::upright(), 4.9), "upright");
    for (const int n : {40, 42, 44}) {
        scene.read(n, dimension::keyDip, 10.2);
        scene.read(n, dimension::blow, 46);
        scene.read(n, dimension::letOff, 3);
        scene.read(n, dimension::lostMotion, 0.2);
    }
    scene.word(40, dimension::lostMotion, word::offRail);
    scene.word(42, dimension::letOff, word::blocks);
    scene.word(44, dimension::letOff, word::noLetOff);
    const auto view = viewPass(scene.record, 1);
    REQUIRE(view);
    const ActionReckoning reckoning(scene.record, *view, nullptr);
    const PassTable table(scene.record.piano, view->pass);
    const auto drawn = [&](int n) {
        return drawnNote(scene.record.piano, table, reckoning.zones(), reckoning.ratioOf({n}), {n});
    };
    const auto offRail = drawn(40);
    REQUIRE(offRail);
    CHECK(offRail->linkage.distances().escapeAt == Approx(*reckoning.at({40}).stroke.letOff).margin(kShownDigit));
    CHECK(std::ranges::find(offRail->atAim, dimension::lostMotion) == offRail->atAim.end());
    const auto blocks = drawn(42);
    REQUIRE(blocks);
    CHECK(blocks->linkage.distances().letOff == 0);
    CHECK(std::ranges::find(blocks->atAim, dimension::letOff) == blocks->atAim.end());
    const auto stays = drawn(44);
    REQUIRE_FALSE(stays);
    CHECK(stays.error().readings.size() == 4);
}

TEST_CASE("readings that cannot be drawn together are named") {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::upright);
    record.specName = "upright";
    Pass pass;
    pass.number = 1;
    const auto read = [&pass](DimensionId id, double mm) {
        Reading reading;
        reading.count = fromTrade(mm, Kind::length);
        pass.cells[{{40}, id}].trials = {reading};
    };
    read(dimension::blow, 20);
    read(dimension::letOff, 25);
    record.passes.push_back(pass);
    const auto view = viewPass(record, 1);
    const ActionReckoning reckoning(record, *view, nullptr);
    const auto drawn =
        drawnNote(record.piano, PassTable(record.piano, view->pass), reckoning.zones(), reckoning.ratioOf({40}), {40});
    REQUIRE_FALSE(drawn);
    CHECK(drawn.error().readings == std::vector<DimensionId>{dimension::letOff, dimension::blow});
}

TEST_CASE("the moments of a stroke come in their order") {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::grand);
    record.specName = "grand";
    Pass pass;
    pass.number = 1;
    record.passes.push_back(pass);
    const auto view = viewPass(record, 1);
    const ActionReckoning reckoning(record, *view, nullptr);
    const auto drawn =
        drawnNote(record.piano, PassTable(record.piano, view->pass), reckoning.zones(), reckoning.ratioOf({40}), {40});
    REQUIRE(drawn);
    double before = -1;
    for (const Moment each : momentsOf(*drawn)) {
        CHECK(travelAt(*drawn, each) >= before);
        before = travelAt(*drawn, each);
        if (each != Moment::check) CHECK(momentAt(*drawn, before) == each);
    }
}
