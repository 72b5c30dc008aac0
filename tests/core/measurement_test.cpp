// Distributions, conformity with a zone, gauge study, capability, paired comparison, climate: against outside values.
#include "core/stats/capability.h"
#include "core/stats/climate.h"
#include "core/stats/conformity.h"
#include "core/stats/distribution.h"
#include "core/stats/gauge_study.h"
#include "core/stats/moments.h"
#include "tests/core/reference.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <cmath>

using namespace hammerline;

TEST_CASE("the normal distribution agrees with R, tails included") {
    // normal_cdf.csv: R 4.2.2 pnorm
    const auto z = reference::column("normal_cdf.csv", "z");
    const auto p = reference::column("normal_cdf.csv", "Phi");
    REQUIRE(z.size() > 10);
    for (std::size_t i = 0; i < z.size(); ++i) {
        CHECK(normalCdf(z[i]) == Approx(p[i]).epsilon(1e-12));
        CHECK(normalQuantile(p[i]) == Approx(z[i]).margin(1e-9));
    }
}

TEST_CASE("Student's t agrees with R") {
    // student_t_quantiles.csv: R 4.2.2 qt
    const auto table = reference::table("student_t_quantiles.csv");
    const auto p = reference::numbers(table.at("p"));
    const auto df = reference::numbers(table.at("df"));
    const auto t = reference::numbers(table.at("t"));
    REQUIRE(p.size() > 10);
    for (std::size_t i = 0; i < p.size(); ++i) {
        CHECK(studentQuantile(p[i], df[i]) == Approx(t[i]).epsilon(1e-11));
        CHECK(studentTwoSided(t[i], df[i]) == Approx(2 * (1 - p[i])).epsilon(1e-9));
    }
}

TEST_CASE("probability of conformity agrees with the examples of JCGM 106") {
    // conformity_jcgm106.json: JCGM 106:2012, clause 7 (inputs and rounded results from memory, recomputed in R)
    const auto reference = reference::json("conformity_jcgm106.json");
    int checked = 0;
    for (const auto& each : reference["examples"]) {
        INFO(each["id"]);
        ToleranceLimits limits;
        if (each["TL"].is_number()) limits.low = each["TL"].get<double>();
        if (each["TU"].is_number()) limits.high = each["TU"].get<double>();
        const double p = probabilityOfConformity(each["y"], each["u"], limits);
        CHECK(p == Approx(each["pc"].get<double>()).epsilon(1e-12));
        CHECK(std::abs(p - std::stod(each["published"].get<std::string>())) < 0.005);
        ++checked;
    }
    CHECK(checked == 3);
    for (const auto& each : reference["required_pc_to_z"])
        CHECK(normalQuantile(each["pc"]) == Approx(each["z"].get<double>()).epsilon(1e-12));
}

TEST_CASE("a grid of readings in a zone of 0 to 100 is decided as the standards decide it") {
    // conformity_two_sided_grid.csv: 76 rows; ISO 14253-1:2017 (1.65 u) and ILAC-G8:09/2019 (w = U), R pnorm
    const auto grid = reference::table("conformity_two_sided_grid.csv");
    const auto y = reference::numbers(grid.at("y_um"));
    const auto u = reference::numbers(grid.at("u_um"));
    const auto pc = reference::numbers(grid.at("pc"));
    REQUIRE(y.size() == 76);
    const ToleranceLimits zone{0.0, 100.0};
    for (std::size_t i = 0; i < y.size(); ++i) {
        INFO("reading " << y[i] << " with u " << u[i]);
        CHECK(probabilityOfConformity(y[i], u[i], zone) == Approx(pc[i]).epsilon(1e-11).margin(1e-15));
        CHECK((decide(y[i], 0, zone) == Conformity::proven) == (grid.at("simple")[i] == "accept"));
        const std::string iso = grid.at("iso14253_1p65u")[i];
        const auto got = decide(y[i], kGuardFactor95 * u[i], zone);
        const std::string name = got == Conformity::proven      ? "conform"
                                 : got == Conformity::disproven ? "nonconform"
                                                                : "undecided";
        CHECK(name == iso);
        const auto byU = decide(y[i], kGuardFactorU * u[i], zone);
        CHECK((byU == Conformity::proven) == (grid.at("guard_U")[i] == "pass"));
        if (grid.at("guard_U")[i] == "fail") CHECK(byU == Conformity::disproven);
    }
}

TEST_CASE("moving toward the middle of a zone never makes conformity less likely") {
    rc::check("probability falls with the distance from the middle", [] {
        const double u = *rc::gen::inRange(1, 80) / 10.0;
        const double far = *rc::gen::inRange(0, 200) / 4.0;
        const double near = far * *rc::gen::inRange(0, 100) / 100.0;
        const ToleranceLimits zone{-10.0, 10.0};
        RC_ASSERT(probabilityOfConformity(near, u, zone) >= probabilityOfConformity(far, u, zone) - 1e-15);
        RC_ASSERT(std::abs(probabilityOfConformity(far, u, zone) - probabilityOfConformity(-far, u, zone)) < 1e-14);
    });
}

namespace {

GaugeStudy automotiveStudy() {
    const auto table = reference::table("gauge_rr_aiag.csv");
    GaugeStudy study{10, 3, 3, std::vector<double>(90)};
    for (std::size_t i = 0; i < table.at("y").size(); ++i) {
        const int person = table.at("operator")[i][0] - 'A';
        const int trial = std::stoi(table.at("trial")[i]) - 1;
        const int part = std::stoi(table.at("part")[i]) - 1;
        study.readings[static_cast<std::size_t>((part * 3 + person) * 3 + trial)] = std::stod(table.at("y")[i]);
    }
    return study;
}

} // namespace

TEST_CASE("average and range of ten parts, three persons, three trials") {
    // gauge_rr_aiag*.csv/json: AIAG MSA, 4th edition. The published figures rest on constants of four digits (K3 =
    // 0.3146 for 1/3.17905), ours are exact: they agree to 3 in 10,000.
    const auto want = reference::json("gauge_rr_aiag_expected.json");
    const auto got = averageAndRange(automotiveStudy());
    REQUIRE(got);
    CHECK(got->meanRange == Approx(want["Rbarbar"].get<double>()).epsilon(1e-12));
    CHECK(got->personRange == Approx(want["Xdiff"].get<double>()).epsilon(1e-12));
    CHECK(got->partRange == Approx(want["Rp"].get<double>()).epsilon(1e-12));
    for (const auto& [value, published] :
         {std::pair{got->repeatability, 0.2019}, std::pair{got->reproducibility, 0.2297}, std::pair{got->gauge, 0.3058},
          std::pair{got->part, 1.1046}, std::pair{got->total, 1.1461}})
        CHECK(value == Approx(published).epsilon(3e-4));
    CHECK(std::abs(100 * got->gaugeShare() - 26.7) < 0.05);
    CHECK(got->distinctCategories == 5);
}

TEST_CASE("analysis of variance of the same study") {
    const auto want = reference::json("gauge_rr_aiag_expected.json");
    const auto full = varianceAnalysis(automotiveStudy(), false);
    REQUIRE(full);
    const std::array rows = {full->part, full->person, full->interaction, full->repeat};
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CHECK(rows[i].degrees == want["anova"]["df"][i].get<double>());
        CHECK(rows[i].squares == Approx(want["anova"]["SS"][i].get<double>()).epsilon(1e-11));
        CHECK(rows[i].mean == Approx(want["anova"]["MS"][i].get<double>()).epsilon(1e-11));
    }
    CHECK(full->interactionP == Approx(0.97411).margin(5e-6));
    CHECK(full->interactionDeviation == 0);
    CHECK(std::pow(full->personDeviation, 2) == Approx(want["varcomp_full"]["oper"].get<double>()).epsilon(1e-11));
    CHECK(std::pow(full->partDeviation, 2) == Approx(want["varcomp_full"]["part"].get<double>()).epsilon(1e-11));

    const auto pooled = varianceAnalysis(automotiveStudy());
    const auto components = want["varcomp_interaction_pooled"];
    CHECK(pooled->interactionDropped);
    CHECK(std::pow(pooled->repeatability, 2) == Approx(components["rep"].get<double>()).epsilon(1e-11));
    CHECK(std::pow(pooled->personDeviation, 2) == Approx(components["oper"].get<double>()).epsilon(1e-11));
    CHECK(std::pow(pooled->partDeviation, 2) == Approx(components["part"].get<double>()).epsilon(1e-11));
    CHECK(repeatabilityLimit(want["pooled_repeatability_sd"]) ==
          Approx(want["repeatability_limit_r_95"].get<double>()).epsilon(1e-12));
}

TEST_CASE("a study that is not balanced is not reckoned") {
    GaugeStudy study = automotiveStudy();
    study.readings.pop_back();
    CHECK_FALSE(averageAndRange(study));
    CHECK_FALSE(varianceAnalysis(study));
    const auto alone = varianceAnalysis(GaugeStudy{2, 1, 2, {1, 1.2, 2, 2.2}});
    REQUIRE(alone);
    CHECK(alone->personDeviation == 0);
    CHECK(alone->repeatability == Approx(std::sqrt(0.02)));
}

TEST_CASE("range factors are the moments of the range of normal values") {
    // control_chart_constants.csv and d2star.csv (Duncan; AIAG MSA, appendix C), and integrated here once more:
    // E[range of m] = integral of 1 - Phi^m - (1 - Phi)^m
    const auto table = reference::table("control_chart_constants.csv");
    for (std::size_t i = 0; i < table.at("m").size(); ++i) {
        const int m = std::stoi(table.at("m")[i]);
        CHECK(*rangeFactor(m) == Approx(std::stod(table.at("d2")[i])).epsilon(1e-8));
        double integral = 0;
        for (double z = -9; z < 9; z += 0.001)
            integral += 0.001 * (1 - std::pow(normalCdf(z), m) - std::pow(normalCdf(-z), m));
        CHECK(*rangeFactor(m) == Approx(integral).epsilon(1e-8));
    }
    const auto star = reference::table("d2star.csv");
    int checked = 0;
    for (std::size_t i = 0; i < star.at("m").size(); ++i) {
        const auto factor = rangeFactor(std::stoi(star.at("m")[i]), std::stoi(star.at("g")[i]));
        if (!factor) continue;
        CHECK(*factor == Approx(std::stod(star.at("d2star")[i])).epsilon(1e-5));
        ++checked;
    }
    CHECK(checked > 20);
    CHECK_FALSE(rangeFactor(11));
}

TEST_CASE("capability indices of the NIST handbook") {
    // nist_handbook_capability.json: NIST/SEMATECH e-Handbook 6.1.6
    const auto want = reference::json("nist_handbook_capability.json")["recomputed"];
    const auto got = capability(16, 2, 8, 20, 14);
    REQUIRE(got);
    CHECK(got->cp == Approx(want["Cp"].get<double>()));
    CHECK(got->cpUpper == Approx(want["Cpu"].get<double>()));
    CHECK(got->cpLower == Approx(want["Cpl"].get<double>()));
    CHECK(got->cpk == Approx(want["Cpk"].get<double>()));
    CHECK(got->cpm == Approx(want["Cpm_T14"].get<double>()));
    // The same process on the deviation scale: limits 8..20 about 14 are -1..1, so mean 1/3 and s 1/3 give 0.6667.
    const std::vector<double> deviations = {0, 1.0 / 3, 2.0 / 3};
    CHECK(*performanceIndex(deviations) == Approx(want["Cpk"].get<double>()));
    CHECK_FALSE(performanceIndex(std::vector<double>{0.2, 0.2}));
}

TEST_CASE("paired comparison agrees with Student's own example") {
    // paired_tests.json: Student 1908 (R datasets::sleep), R t.test and SciPy
    const auto want = reference::json("paired_tests.json")["sleep"];
    const std::vector<double> first = want["after"];
    const std::vector<double> second = want["before"];
    const auto got = pairedDifference(first, second); // R's mean is before - after
    REQUIRE(got);
    CHECK(got->mean == Approx(want["mean"].get<double>()).epsilon(1e-10));
    CHECK(*got->deviation == Approx(want["sd"].get<double>()).epsilon(1e-10));
    CHECK(*got->t == Approx(want["t"].get<double>()).epsilon(1e-10));
    CHECK(*got->p == Approx(want["p"].get<double>()).epsilon(1e-10));
    CHECK(*got->low95 == Approx(want["ci95"][0].get<double>()).epsilon(1e-10));
    CHECK(*got->high95 == Approx(want["ci95"][1].get<double>()).epsilon(1e-10));
    CHECK(*got->leastSignificantSingle == Approx(want["LSD95_single_pair"].get<double>()).epsilon(1e-10));
    CHECK_FALSE(pairedDifference(first, std::vector<double>{1.0}));
}

TEST_CASE("moisture of wood agrees with the formula of 1998 and roughly with the handbook's table") {
    // climate_emc.json: Simpson 1998, FPL-RN-0268; the table rows are from memory, 0.3 per cent is their tolerance
    const auto reference = reference::json("climate_emc.json");
    REQUIRE(reference["rows"].size() == 80);
    for (const auto& row : reference["rows"])
        CHECK(std::abs(*equilibriumMoisture(row["T_C"], row["rh"]) - row["emc"].get<double>()) < 1e-6);
    for (const auto& row : reference["handbook_table_from_memory"]) {
        const double celsius = (row["T_F"].get<double>() - 32) / 1.8;
        CHECK(std::abs(*equilibriumMoisture(celsius, row["rh"]) - row["emc"].get<double>()) < 0.3);
    }
    CHECK_FALSE(equilibriumMoisture(20, 101));
    CHECK(*equilibriumMoisture(20, 0) == 0);
}

TEST_CASE("the scale's own steps enter the uncertainty of a reading") {
    // By hand: a scale of 0.5 alone has 0.5/sqrt(12)
    CHECK(readingUncertainty(0, 0.5) == Approx(0.144337567));
    CHECK(readingUncertainty(0.3, 0.5) == Approx(std::sqrt(0.09 + 0.25 / 12)));
}
