// Every note's account and stroke as read and after the plan: one set of functions for both, and the plan's own
// figures.
#include "core/plan/after_plan.h"
#include "core/sheet/note_action.h"

#include <nlohmann/json.hpp>

#include "scene.h"

using namespace hammerline;

namespace {

/// Sixty notes that tell their ratio, one with a let-off that is far.
scene::Scene told() {
    scene::Scene scene(scene::upright(), "upright");
    for (int n = 15; n <= 75; ++n) {
        const double blow = 45 + 0.02 * n, letOff = 3 + 0.01 * (n % 7);
        scene.read(n, dimension::keyDip, 10.2);
        scene.read(n, dimension::lostMotion, 0.2);
        scene.read(n, dimension::blow, blow);
        scene.read(n, dimension::letOff, letOff);
        scene.read(n, dimension::aftertouch, 10.2 - 0.2 - (blow - letOff) / 4.9);
    }
    scene.read(40, dimension::letOff, 6);
    scene.read(40, dimension::aftertouch, 10.2 - 0.2 - (45.8 - 6) / 4.9);
    return scene;
}

} // namespace

TEST_CASE("what is supposed stands in the place of the reading, and nothing else moves") {
    const scene::Scene scene = told();
    const Pass& pass = scene.record.passes.back();
    const std::array supposed{Supposed{{{40}, dimension::letOff}, 2.5}};
    const Pass other = passSupposing(pass, supposed);
    CHECK(other.value({{40}, dimension::letOff}) == fromTrade(2.5, Kind::length));
    CHECK(other.cells.size() == pass.cells.size());
    for (const auto& [cell, measured] : pass.cells)
        if (cell != Cell{{40}, dimension::letOff}) CHECK(other.at(cell)->trials == measured.trials);
}

// By hand from F 235, P 214, T 142, C 127: a punching p raises the front 2.65493 p, gives 2.75306 p of dip and takes
// 0.19547 p of lost motion. 1 mm of height is p = 0.37666.
TEST_CASE("a raised front gives dip and takes lost motion, and beyond that lifts the hammer off its rail") {
    const scene::Scene scene = told();
    const Piano& piano = scene.record.piano;
    const auto of = [](const std::vector<Supposed>& all, DimensionId id) {
        const auto found = std::ranges::find(all, Cell{{40}, id}, &Supposed::cell);
        REQUIRE(found != all.end());
        return found->value;
    };
    const auto raised = raisedFront(piano, scene.record.passes.back(), {40}, 1.0, 4.9);
    CHECK(of(raised, dimension::keyDip) == Approx(10.2 + 1.03696).margin(1e-4));
    CHECK(of(raised, dimension::lostMotion) == Approx(0.2 - 0.07363).margin(1e-4));
    CHECK(raised.size() == 2); // the blow is the rail's
    // 4 mm take 0.2945 of the 0.2 there are: the hammer stands 0.0945 x 4.9 nearer
    const auto lifted = raisedFront(piano, scene.record.passes.back(), {40}, 4.0, 4.9);
    CHECK(of(lifted, dimension::lostMotion) == 0);
    CHECK(of(lifted, dimension::blow) == Approx(45.8 - 0.09451 * 4.9).margin(1e-3));
    CHECK(raisedFront(piano, scene.record.passes.back(), {1}, 1.0, 4.9).empty()); // nothing read, nothing follows

    scene::Scene grand(*makePiano(ActionKind::grand), "grand");
    grand.read(40, dimension::keyDip, 10);
    grand.read(40, dimension::blow, 46);
    // F 250, P 228, T 225, C 130: p = 225/475 a mm; dip 250 (1/225 + 1/228) p, blow R 250 (1/130 - 1/225) p less
    const auto onGrand = raisedFront(grand.record.piano, grand.record.passes.back(), {40}, 1.0, 4.8);
    CHECK(of(onGrand, dimension::keyDip) == Approx(10 + 250 * (1.0 / 225 + 1.0 / 228) * 225 / 475));
    CHECK(of(onGrand, dimension::blow) == Approx(46 - 4.8 * 250 * (1.0 / 130 - 1.0 / 225) * 225 / 475));
}

// The plan brings let-off to its aim; by the relation each mm of it gives 1/R of a mm at the key.
TEST_CASE("after the plan the account speaks of the plan's own expected values") {
    const scene::Scene scene = told();
    const auto view = viewPass(scene.record, 1, Rule::plain, scene.sheet);
    REQUIRE(view);
    const Plan plan = scene.plan();
    const NoteAction action = ActionReckoning(scene.record, *view, &plan).at({40});
    REQUIRE(action.accountAfter);
    REQUIRE(action.accountAfter->computed);
    const auto expected = scene::expectedAt(plan, 40, dimension::letOff);
    REQUIRE(expected);
    const double ratio = action.account.ratio.value;
    CHECK(*action.accountAfter->computed - *action.account.computed == Approx((*expected - 6) / ratio).margin(1e-6));
    CHECK(*action.strokeAfter->aftertouch == Approx(*action.accountAfter->computed).margin(1e-9));
    const auto left = scene::expectedAt(plan, 40, dimension::aftertouch);
    REQUIRE(left);
    CHECK(*action.accountAfter->computed == Approx(*left).margin(0.05));
}

TEST_CASE("a plan of another pass says nothing about this one") {
    scene::Scene scene = told();
    const auto view = viewPass(scene.record, 1, Rule::plain, scene.sheet);
    REQUIRE(view);
    Plan plan = scene.plan();
    plan.pass = 2;
    const ActionReckoning reckoning(scene.record, *view, &plan);
    CHECK_FALSE(reckoning.after());
    CHECK_FALSE(reckoning.at({40}).accountAfter);
}

// By hand, with R = 4.9: dip = 0.2 + (45.8 - 3.05)/4.9 + 1.0756 = 10.0 where 10.0 was left out.
TEST_CASE("the one line that was not read follows from the others and the aftertouch") {
    scene::Scene scene = told();
    const double whole = 0.2 + (45.8 - 3.05) / 4.9;
    scene.pass().cells.erase({{40}, dimension::keyDip});
    scene.read(40, dimension::letOff, 3.05);
    scene.read(40, dimension::aftertouch, 10.0 - whole);
    const auto view = viewPass(scene.record, 1, Rule::plain, scene.sheet);
    const NoteAction action = ActionReckoning(scene.record, *view, nullptr).at({40});
    CHECK_FALSE(action.account.computed);
    REQUIRE(action.account.inferred);
    CHECK(action.account.inferred->dimension == dimension::keyDip);
    CHECK(action.account.inferred->value == Approx(10.0).margin(0.02));
    CHECK(action.account.inferred->uncertainty > 0.05);
    scene.pass().cells.erase({{40}, dimension::blow}); // two unknown lines of one equation
    const auto fewer = viewPass(scene.record, 1, Rule::plain, scene.sheet);
    CHECK_FALSE(ActionReckoning(scene.record, *fewer, nullptr).at({40}).account.inferred);
}

TEST_CASE("an inferred blow brings its lever of R with it") {
    scene::Scene scene = told();
    scene.pass().cells.erase({{30}, dimension::blow});
    const auto view = viewPass(scene.record, 1, Rule::plain, scene.sheet);
    const auto inferred = ActionReckoning(scene.record, *view, nullptr).at({30}).account.inferred;
    REQUIRE(inferred);
    CHECK(inferred->dimension == dimension::blow);
    CHECK(inferred->value == Approx(45.6).margin(0.1));
    // at least what dip alone brings: R times its uncertainty
    const double dip = toTrade(uncertaintyOf(dimension::keyDip, scene.record.piano), Kind::length);
    CHECK(inferred->uncertainty > 4.9 * dip);
}

TEST_CASE("zones on the key's way are those of the spec sheet, carried by the ratio") {
    const scene::Scene scene = told();
    const Zones zones = scene.zones();
    const Ratio ratio{.value = 4.9, .spread = 0.1, .notes = 50};
    const StrokeZones on = strokeZones(scene.record.piano, zones, ratio, {40});
    const auto mm = [&](DimensionId id) { return toTrade(zones.at({{40}, id})->nominal, Kind::length); };
    REQUIRE(on.letOff);
    CHECK(on.letOff->aim == Approx(mm(dimension::lostMotion) + (mm(dimension::blow) - mm(dimension::letOff)) / 4.9));
    CHECK(*on.letOff->low < *on.letOff->high);
    CHECK(on.bottom->aim == Approx(mm(dimension::keyDip)));
    REQUIRE(on.damperStirs);
    CHECK(on.damperStirs->aim == Approx(mm(dimension::lostMotion) + mm(dimension::damperStart) / 4.9));
}

TEST_CASE("the answer as JSON tells every note with the figures of its account") {
    const scene::Scene scene = told();
    const auto view = viewPass(scene.record, 1, Rule::plain, scene.sheet);
    const Plan plan = scene.plan();
    const auto actions = ActionReckoning(scene.record, *view, &plan).all();
    const auto json = nlohmann::json::parse(actionJson(scene.record, *view, actions));
    REQUIRE(json.at("notes").size() == 88);
    const auto& row = json.at("notes").at(39);
    CHECK(row.at("note") == 40);
    CHECK(row.at("account").at("aftertouch").get<double>() == Approx(*actions[39].account.computed).margin(1e-6));
    CHECK(row.at("stroke").at("let_off").get<double>() == Approx(*actions[39].stroke.letOff).margin(1e-6));
    CHECK_FALSE(row.at("account_after").is_null());
    CHECK(json.at("notes").at(0).at("account").at("aftertouch").is_null());
}
