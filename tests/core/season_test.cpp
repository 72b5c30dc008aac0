// The aim of lost motion by the season (list post 2000-Dec/077271: a little, not much, even, in the driest months; the
// amounts: common practice, no source). Figures worked out by hand.
#include "core/sheet/pass_view.h"
#include "core/spec/season.h"
#include "tests/core/scene.h"

using namespace hammerline;
using scene::Scene;

namespace {

double aimOf(const SpecSheet& sheet) {
    for (const ZoneRow& row : sheet.zones)
        if (row.dimension == dimension::lostMotion) return toTrade(row.first.nominal, Kind::length);
    return 0;
}

} // namespace

TEST_CASE("in the damp season the aim is tight, in the dry one a trace is left") {
    const SpecSheet upright = *builtInSheet("upright"), old = *builtInSheet("old-upright"),
                    drop = *builtInSheet("drop");
    const YearOfHumidity year{30, 60}; // a swing of 30 points: 0.2 mm
    CHECK(aimOf(withSeasonsAim(upright, year, 45)) == Approx(0.15));
    CHECK(aimOf(withSeasonsAim(upright, year, 30)) == Approx(0.25));
    CHECK(aimOf(withSeasonsAim(upright, year, 60)) == Approx(0.05));
    CHECK(aimOf(withSeasonsAim(upright, year, 90)) == Approx(0.05)); // no damper than the dampest month
    CHECK(aimOf(withSeasonsAim(upright, YearOfHumidity{40, 50}, 40)) == Approx(0.20));
    CHECK(aimOf(withSeasonsAim(old, YearOfHumidity{20, 80}, 20)) == Approx(0.45));
    CHECK(aimOf(withSeasonsAim(drop, YearOfHumidity{20, 80}, 80)) == Approx(0.1)); // never quite none
    CHECK(aimOf(withSeasonsAim(upright, year, {})) == Approx(0.15));
    CHECK(aimOf(withSeasonsAim(upright, {}, 30)) == Approx(0.15));
    CHECK(withSeasonsAim(*builtInSheet("grand"), year, 30) == *builtInSheet("grand"));
}

TEST_CASE("the year of a room is two figures, the dry one first") {
    CHECK(parseYearOfHumidity("35-70")->high == 70);
    CHECK(parseYearOfHumidity("35,5-70")->low == 35.5); // as any number of the program, with either mark
    for (const char* wrong : {"", "35", "70-35", "35-35", "a-b", "35-120", "35-"})
        CHECK_FALSE(parseYearOfHumidity(wrong));
}

TEST_CASE("a plan made on a damp day takes lost motion up to less than one on a dry day") {
    const auto aimOn = [](double humidity) {
        Scene scene(scene::upright(), "upright");
        scene.record.preferences["yearly-humidity"] = "30-60";
        Pass& pass = scene.pass();
        pass.humidity = humidity;
        for (int n = 1; n <= 88; ++n) {
            Reading reading;
            reading.count = fromMm(n == 40 ? 1.0 : 0.15).nm;
            pass.cells[{{n}, dimension::lostMotion}].trials = {reading};
        }
        PlanOptions full;
        full.intent = Intent::full;
        const auto plan = makePlan(scene.record, scene.sheet, 1, full);
        for (const Step& step : plan->steps)
            if (step.operation == operation::capstanTurn && step.note == NoteNumber{40}) return step.aim.value_or(-1);
        return -1.0;
    };
    CHECK(aimOn(30) == Approx(0.25).margin(0.01));
    CHECK(aimOn(60) == Approx(0.05).margin(0.01));
}

TEST_CASE("a pass is judged by the aim of its season, and the plan moves it no further") {
    Scene scene(scene::upright(), "upright");
    scene.record.preferences["yearly-humidity"] = "30-60";
    scene.read(40, dimension::lostMotion, 1.0);
    const Cell cell{{40}, dimension::lostMotion};
    const auto aimOn = [&](double humidity) {
        scene.pass().humidity = humidity;
        const auto view = viewPass(scene.record, 1, Rule::plain, scene.sheet);
        CHECK(view->sheet == scene.sheet); // the sheet itself stays
        return toTrade(view->review.zones.at(cell).nominal, Kind::length);
    };
    CHECK(aimOn(30) == Approx(0.25));
    CHECK(aimOn(45) == Approx(0.15));
    CHECK(aimOn(60) == Approx(0.05));
}
