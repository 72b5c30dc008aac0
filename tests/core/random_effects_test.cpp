// Means over cases that truly differ, against published figures.
#include "core/stats/random_effects.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace hammerline;

namespace {

/// Thirteen trials of a vaccine (van Houwelingen, Arends and Stijnen, Statistics in Medicine 21, 2002, table I): ill
/// and well of those treated, ill and well of those not.
constexpr int kTrials[13][4] = {
    {4, 119, 11, 128},      {6, 300, 29, 274},      {3, 228, 11, 209},        {62, 13536, 248, 12619},
    {33, 5036, 47, 5761},   {180, 1361, 372, 1079}, {8, 2537, 10, 619},       {505, 87886, 499, 87892},
    {29, 7470, 45, 7232},   {17, 1699, 65, 1600},   {186, 50448, 141, 27197}, {5, 2493, 3, 2338},
    {27, 16886, 29, 17825},
};

/// The logarithm of the relative risk with its large-sample variance.
std::vector<CaseEstimate> relativeRisks() {
    std::vector<CaseEstimate> cases;
    for (const auto& t : kTrials) {
        const double a = t[0], all = t[0] + t[1], c = t[2], none = t[2] + t[3];
        cases.push_back({std::log((a / all) / (c / none)), std::sqrt(1 / a - 1 / all + 1 / c - 1 / none)});
    }
    return cases;
}

} // namespace

// Viechtbauer, Journal of Statistical Software 36 (3), 2010, treats the same data: Q(12) = 152.2330, and by the
// estimator of DerSimonian and Laird tau^2 = 0.3088, mean -0.7141, standard error 0.1787 (quoted from memory; the table
// itself was looked up).
TEST_CASE("the mean over thirteen trials is the published one") {
    const auto pooled = randomEffects(relativeRisks());
    REQUIRE(pooled);
    CHECK(pooled->cases == 13);
    CHECK(pooled->q == Approx(152.2330).margin(5e-5));
    CHECK(pooled->between * pooled->between == Approx(0.3088).margin(5e-5));
    CHECK(pooled->mean == Approx(-0.7141).margin(5e-5));
    CHECK(pooled->meanSd == Approx(0.1787).margin(5e-5));
    // t(11; 0.975) = 2.201 (any table of Student's t)
    CHECK(pooled->high95 - pooled->mean == Approx(2.201 * std::sqrt(0.3088 + 0.1787 * 0.1787)).epsilon(0.001));
}

TEST_CASE("cases that agree within their uncertainty have no spread of their own") {
    const std::vector<CaseEstimate> alike = {{1.0, 0.2}, {1.1, 0.2}, {0.9, 0.2}};
    const auto pooled = randomEffects(alike);
    REQUIRE(pooled);
    CHECK(pooled->between == 0);
    CHECK(pooled->mean == Approx(1.0));
    CHECK(pooled->meanSd == Approx(0.2 / std::sqrt(3.0)));
}

TEST_CASE("fewer than three cases, or one without an uncertainty, give none") {
    CHECK_FALSE(randomEffects(std::vector<CaseEstimate>{{1, 0.1}, {2, 0.1}}));
    CHECK_FALSE(randomEffects(std::vector<CaseEstimate>{{1, 0.1}, {2, 0}, {3, 0.1}}));
    CHECK_FALSE(randomEffects(std::vector<CaseEstimate>{{1, 0.1}, {NAN, 0.1}, {3, 0.1}}));
}

TEST_CASE("a case of its own outweighs the others as it is read better") {
    const auto pooled = randomEffects(std::vector<CaseEstimate>{{1.0, 0.1}, {1.4, 0.1}, {1.8, 0.1}});
    REQUIRE(pooled);
    const CaseEstimate none = weighed(*pooled, {});
    CHECK(none.value == Approx(1.4));
    CHECK(none.sd > pooled->meanSd);
    const CaseEstimate rough = weighed(*pooled, CaseEstimate{3.0, 2.0}),
                       fine = weighed(*pooled, CaseEstimate{3.0, 0.02});
    CHECK(rough.value < 1.7);
    CHECK(fine.value > 2.9);
    CHECK(fine.sd < 0.02);
}
