// Moments, regression and robust measures against published and independently computed values.
#include "core/stats/moments.h"
#include "core/stats/regression.h"
#include "core/stats/robust.h"
#include "tests/core/reference.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

using namespace hammerline;

namespace {

/// Correct decimal digits, as NIST counts them: -log10 of the relative error.
double digits(double got, double certified) {
    if (got == certified) return 16;
    return -std::log10(std::abs(got - certified) / std::abs(certified));
}

/// The formula that must not be used: one pass over the sum of squares.
double naiveDeviation(const std::vector<double>& values) {
    double sum = 0;
    double squares = 0;
    for (const double x : values) {
        sum += x;
        squares += x * x;
    }
    const auto n = static_cast<double>(values.size());
    return std::sqrt((squares - sum * sum / n) / (n - 1));
}

struct Univariate {
    std::string set;
    double mean, deviation, lagOne;
    double meanDigits, deviationDigits, lagDigits;
};

// NIST StRD, univariate summary statistics: certified values of the .dat files. The inputs of NumAcc3 and 4 are not
// representable in binary, so fewer digits are possible there.
const std::vector<Univariate> kUnivariate = {
    {"lew", -177.435, 277.332168044316, -0.307304800605679, 14, 12, 11},
    {"lottery", 518.95871559633, 291.699727470969, -0.120948622967393, 13.5, 12, 11},
    {"mavro", 2.001856, 0.000429123454003053, 0.937989183438248, 14, 12, 11},
    {"michelso", 299.8524, 0.0790105478190518, 0.535199668621283, 14, 12, 11},
    {"numacc1", 10000002, 1, -0.5, 14, 14, 14},
    {"numacc2", 1.2, 0.1, -0.999, 14, 12, 11},
    {"numacc3", 1000000.2, 0.1, -0.999, 14, 8, 8},
    {"numacc4", 10000000.2, 0.1, -0.999, 14, 7, 7},
    {"pidigits", 4.5348, 2.86733906028871, -0.00355099287237972, 14, 12, 11},
};

} // namespace

TEST_CASE("mean, deviation and lag-one correlation agree with the NIST reference sets") {
    for (const auto& each : kUnivariate) {
        INFO(each.set);
        const auto y = reference::column("strd_" + each.set + ".csv", "y");
        CHECK(digits(*mean(y), each.mean) >= each.meanDigits);
        CHECK(digits(*standardDeviation(y), each.deviation) >= each.deviationDigits);
        CHECK(digits(*lagOneCorrelation(y), each.lagOne) >= each.lagDigits);
    }
}

TEST_CASE("a one-pass variance fails where ours holds") {
    for (const std::string set : {"numacc3", "numacc4"}) {
        INFO(set);
        const auto y = reference::column("strd_" + set + ".csv", "y");
        const double naive = naiveDeviation(y);
        CHECK((std::isnan(naive) || digits(naive, 0.1) < 5));
    }
}

TEST_CASE("a line through the origin agrees with NIST NoInt1 and NoInt2") {
    for (const std::string set : {"NoInt1", "NoInt2"}) {
        INFO(set);
        const auto certified = reference::json("strd_certified.json")["linear"][set];
        const std::string file = set == "NoInt1" ? "strd_noint1.csv" : "strd_noint2.csv";
        const auto fit = fitThroughOrigin(reference::column(file, "x"), reference::column(file, "y"));
        REQUIRE(fit);
        CHECK(digits(fit->slope, certified["B1"]) >= 12);
        CHECK(digits(*fit->standardError, certified["se"]) >= 12);
        CHECK(digits(*fit->residualDeviation, certified["residual_sd"]) >= 12);
        CHECK(digits(fit->rSquared, certified["r2_uncentered"]) >= 12);
    }
}

TEST_CASE("a line with an intercept agrees with NIST Norris") {
    const auto fit = fitLine(reference::column("strd_norris.csv", "x"), reference::column("strd_norris.csv", "y"));
    REQUIRE(fit);
    CHECK(digits(fit->intercept, -0.262323073774029) >= 11);
    CHECK(digits(fit->slope, 1.00211681802045) >= 12);
    CHECK(digits(*fit->interceptError, 0.232818234301152) >= 11);
    CHECK(digits(*fit->slopeError, 0.429796848199937E-03) >= 11);
    CHECK(digits(*fit->residualDeviation, 0.884796396144373) >= 11);
    CHECK(digits(fit->rSquared, 0.999993745883712) >= 12);
}

TEST_CASE("millimetres a turn from twelve trials, with their intervals") {
    // origin_regression_turns.json: constructed data, R 4.2.2 lm(dmm ~ turns - 1)
    const auto want = reference::json("origin_regression_turns.json");
    const std::vector<double> turns = want["turns"];
    const std::vector<double> change = want["dmm"];
    const auto fit = fitThroughOrigin(turns, change);
    REQUIRE(fit);
    CHECK(digits(fit->slope, want["slope"]) >= 12);
    CHECK(digits(*fit->standardError, want["se"]) >= 12);
    CHECK(fit->degreesOfFreedom == want["df"]);
    CHECK(digits(fit->rSquared, want["r2_uncentered"]) >= 12);
    const auto slope = fit->slopeInterval();
    CHECK(digits(slope->low, want["ci95"][0]) >= 11);
    CHECK(digits(slope->high, want["ci95"][1]) >= 11);
    const auto next = fit->prediction(0.6);
    CHECK(digits(next->centre, want["pred_at_0.6"][0]) >= 11);
    CHECK(digits(next->low, want["pred_at_0.6"][1]) >= 11);
    CHECK(digits(next->high, want["pred_at_0.6"][2]) >= 11);
}

TEST_CASE("a line through the origin agrees with R on cars") {
    // cars.csv: R datasets::cars (Ezekiel 1930); R 4.2.2 lm(dist ~ speed - 1)
    const auto fit = fitThroughOrigin(reference::column("cars.csv", "speed"), reference::column("cars.csv", "dist"));
    REQUIRE(fit);
    CHECK(digits(fit->slope, 2.90913214393710) >= 12);
    CHECK(digits(*fit->standardError, 0.141368637499937) >= 12);
    CHECK(digits(*fit->residualDeviation, 16.2592371466834) >= 12);
    CHECK(digits(fit->rSquared, 0.896289305805206) >= 12);
    CHECK(fit->degreesOfFreedom == 49);
}

TEST_CASE("one trial teaches a slope without an error, none teaches nothing") {
    const std::vector<double> one = {0.5};
    const auto fit = fitThroughOrigin(one, std::vector<double>{-3.0});
    REQUIRE(fit);
    CHECK(fit->slope == -6);
    CHECK_FALSE(fit->standardError);
    CHECK_FALSE(fit->slopeInterval());
    CHECK_FALSE(fitThroughOrigin(std::vector<double>{0, 0}, std::vector<double>{1, 2}));
    CHECK_FALSE(fitThroughOrigin({}, {}));
    // Two points (+1, 0.40) and (-1, -0.42): slope 0.41, standard error 0.01 (origin_regression_turns.json, edge rows)
    const auto two = fitThroughOrigin(std::vector<double>{1, -1}, std::vector<double>{0.40, -0.42});
    CHECK(two->slope == Approx(0.41));
    CHECK(*two->standardError == Approx(0.01));
}

TEST_CASE("median, MAD and quantiles agree with R on its own data sets") {
    // cars$dist and cars$speed as in robust_univariate.json (R 4.2.2: median, mad(constant = 1), quantile 6 and 7)
    const std::vector<double> dist = {2,  10, 4,  22, 16, 10, 18, 26, 34, 17, 28, 14, 20, 24, 28,  26, 34,
                                      34, 46, 26, 36, 60, 80, 20, 26, 54, 32, 40, 32, 40, 50, 42,  56, 76,
                                      84, 36, 46, 68, 32, 48, 52, 56, 64, 66, 54, 70, 92, 93, 120, 85};
    const auto want = reference::json("robust_univariate.json")["univariate"]["cars_dist"];
    REQUIRE(dist.size() == want["n"]);
    CHECK(*mean(dist) == Approx(want["mean"].get<double>()).epsilon(1e-13));
    CHECK(*standardDeviation(dist) == Approx(want["sd"].get<double>()).epsilon(1e-13));
    CHECK(*median(dist) == want["median"].get<double>());
    CHECK(*medianAbsoluteDeviation(dist) == want["mad_raw"].get<double>());
    CHECK(*quantile(dist, 0.25) == want["q25_type7"].get<double>());
    CHECK(*quantile(dist, 0.75) == want["q75_type7"].get<double>());
    CHECK(*quantile(dist, 0.25, QuantileType::six) == want["q25_type6"].get<double>());
    CHECK(*quantile(dist, 0.75, QuantileType::six) == want["q75_type6"].get<double>());
    CHECK(*quantile(dist, 0) == 2);
    CHECK(*quantile(dist, 1) == 120);
    CHECK_FALSE(quantile(dist, 1.5));
}

TEST_CASE("modified z-scores flag what Iglewicz and Hoaglin flag") {
    // modified_zscore.json: NIST e-Handbook 1.3.5.17 (Iglewicz and Hoaglin 1993), recomputed in R
    const auto cases = reference::json("modified_zscore.json")["cases"];
    int checked = 0;
    for (const auto& each : cases) {
        if (!each.contains("x") || !each.contains("modified_z")) continue;
        INFO(each["name"]);
        const std::vector<double> x = each["x"];
        const auto z = modifiedZ(x);
        std::vector<int> flagged;
        for (std::size_t i = 0; i < x.size(); ++i) {
            if (each["modified_z"][i].is_number()) {
                REQUIRE(z[i]);
                CHECK(*z[i] == Approx(each["modified_z"][i].get<double>()).margin(1e-10));
            }
            if (z[i] && std::abs(*z[i]) > kModifiedZCutOff) flagged.push_back(static_cast<int>(i) + 1);
        }
        const auto want = each.value("flag_gt_3.5", nlohmann::json::array());
        CHECK(flagged == (want.is_array() ? want.get<std::vector<int>>() : std::vector<int>{want.get<int>()}));
        ++checked;
    }
    CHECK(checked >= 2);
}

TEST_CASE("without a MAD the mean deviation takes over; without any spread there is no score") {
    // {5,5,5,5,9}: MAD 0, MeanAD 0.8, so z of the 9 is 4/(1.253314 x 0.8)
    const std::vector<double> flat = {5, 5, 5, 5, 9};
    const auto z = modifiedZ(flat);
    REQUIRE(z[4]);
    CHECK(*z[4] == Approx(4 / (1.253314 * 0.8)));
    CHECK(*z[0] == 0);
    for (const auto& each : modifiedZ(std::vector<double>{3, 3, 3}))
        CHECK_FALSE(each);
}

TEST_CASE("robust measures do not see the order of the values") {
    rc::check("median, MAD and quantiles are the same for any order", [](std::vector<double> values) {
        values.erase(std::remove_if(values.begin(), values.end(), [](double x) { return !(std::abs(x) < 1e100); }),
                     values.end());
        auto shuffled = values;
        std::reverse(shuffled.begin(), shuffled.end());
        std::rotate(shuffled.begin(), shuffled.begin() + static_cast<std::ptrdiff_t>(shuffled.size() / 2),
                    shuffled.end());
        RC_ASSERT(median(values) == median(shuffled));
        RC_ASSERT(medianAbsoluteDeviation(values) == medianAbsoluteDeviation(shuffled));
        RC_ASSERT(quantile(values, 0.3) == quantile(shuffled, 0.3));
    });
}

TEST_CASE("pooled repeats weigh each group by its degrees of freedom") {
    // By hand: {1,3}: s^2 = 2, 1 df; {1,2,3}: s^2 = 1, 2 df; pooled (2 + 2)/3
    const std::vector<std::vector<double>> groups = {{1, 3}, {1, 2, 3}, {7}};
    const auto pooled = pooledDeviation(groups);
    REQUIRE(pooled);
    CHECK(pooled->value == Approx(std::sqrt(4.0 / 3)));
    CHECK(pooled->degreesOfFreedom == 3);
    CHECK_FALSE(pooledDeviation(std::vector<std::vector<double>>{{1}, {2}}));
}
