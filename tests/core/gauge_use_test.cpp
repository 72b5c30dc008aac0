// How well each dimension is read: repeats pooled by hand, and the published study of ten parts, three persons and
// three trials (gauge_rr_aiag.csv and gauge_rr_aiag_expected.json: AIAG MSA, 4th edition, as reproduced publicly).
#include "core/experience/gauge_use.h"
#include "tests/core/reference.h"
#include "tests/core/scene.h"

#include <cmath>

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;

namespace {

void repeats(Scene& scene, int note, DimensionId id, std::initializer_list<double> values) {
    Measured& measured = scene.pass().cells[{{note}, id}];
    for (const double value : values) {
        Reading reading;
        reading.count = fromTrade(value, row(id).kind);
        measured.trials.push_back(reading);
    }
}

} // namespace

TEST_CASE("repeats of several notes are pooled by their degrees of freedom") {
    Scene scene(upright(), "upright");
    // By hand: 2.9 3.1 (mean 3.0, squares 0.02), 3.4 3.6 3.5 (mean 3.5, squares 0.02); 0.04 over 1 + 2 = 0.013333.
    repeats(scene, 40, letOff, {2.9, 3.1});
    repeats(scene, 41, letOff, {3.4, 3.6, 3.5});
    scene.read(42, letOff, 9.0); // alone: repeats nothing
    scene.read(40, keyDip, 10.0);
    const auto all = gaugeUse(scene.record);
    REQUIRE(all.size() == 1);
    const GaugeUse& use = all.front();
    CHECK(use.dimension == letOff);
    CHECK(use.readings == 5);
    CHECK(use.degrees == 3);
    CHECK(use.repeatability == Approx(std::sqrt(0.04 / 3)));
    CHECK(use.seen == Approx(std::sqrt(0.04 / 3 + 0.01 / 12)));
    CHECK(use.difference == Approx(1.96 * std::sqrt(2.0) * std::sqrt(0.04 / 3)));
    CHECK_FALSE(use.study);
}

TEST_CASE("three persons' passes give the published gauge study") {
    const auto want = reference::json("gauge_rr_aiag_expected.json");
    Scene scene(upright(), "upright");
    const std::string persons = "ABC";
    std::map<std::pair<char, int>, std::vector<double>> readings; // person, part
    const auto table = reference::table("gauge_rr_aiag.csv");
    for (std::size_t i = 0; i < table.at("y").size(); ++i)
        readings[{table.at("operator")[i].front(), std::stoi(table.at("part")[i])}].push_back(
            std::stod(table.at("y")[i]));
    REQUIRE(readings.size() == 30);
    for (const char person : persons) {
        if (person != 'A') scene.nextPass();
        for (int part = 1; part <= 10; ++part)
            for (const double y : readings.at({person, part}))
                repeats(scene, 20 + part, letOff, {y + 5}); // a let-off is never below nothing; only differences count
    }
    const std::vector<int> passes = {1, 2, 3};
    const auto all = gaugeUse(scene.record, passes);
    REQUIRE(all.size() == 1);
    REQUIRE(all.front().study);
    const GaugeUse::Study& study = *all.front().study;
    CHECK(study.byRange);
    CHECK(study.notes == 10);
    CHECK(study.persons == 3);
    CHECK(study.trials == 3);
    CHECK(study.repeatability == Approx(want["EV"].get<double>()).epsilon(2e-3));
    CHECK(study.reproducibility == Approx(want["AV"].get<double>()).epsilon(2e-3));
    CHECK(study.gauge == Approx(want["GRR"].get<double>()).epsilon(2e-3));
    CHECK(study.notesDiffer == Approx(want["PV"].get<double>()).epsilon(2e-3));
    CHECK(study.total == Approx(want["TV"].get<double>()).epsilon(2e-3));
    CHECK(study.distinct == 5);
}

TEST_CASE("notes that were worked between the persons' passes are left out of the study") {
    Scene scene(upright(), "upright");
    for (int pass = 0; pass < 2; ++pass) {
        if (pass > 0) scene.nextPass();
        for (int note = 30; note < 34; ++note)
            repeats(scene, note, letOff, {3.0 + 0.1 * note, 3.1 + 0.1 * note});
        if (pass == 0) scene.did(operation::letOffTurn, 31, 0.25);
    }
    const std::vector<int> passes = {1, 2};
    const auto all = gaugeUse(scene.record, passes);
    REQUIRE(all.size() == 1);
    REQUIRE(all.front().study);
    CHECK(all.front().study->notes == 3);
}
