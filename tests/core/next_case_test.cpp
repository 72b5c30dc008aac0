// The next case by few cases, against a published example.
#include "core/stats/next_case.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

using namespace hammerline;

// Eight schools (Rubin 1981; Gelman et al., Bayesian Data Analysis, 3rd edition, section 5.5, table 5.2). With tau
// spread evenly the mean of all schools is about 8 with a standard deviation of about 5 (quoted from memory; the table
// too).
TEST_CASE("the mean over eight schools is the published one") {
    const std::vector<CaseEstimate> schools = {{28, 15}, {8, 10}, {-3, 16}, {7, 11},
                                               {-1, 9},  {1, 11}, {18, 10}, {12, 18}};
    const CaseEstimate next = nextCase(schools, 1000); // even up to where it matters no more
    CHECK(next.value == Approx(8).margin(0.5));
    const CaseEstimate alike = nextCase(schools, 1e-6); // no spread at all: the pooled estimate 7.7 +- 4.1
    CHECK(alike.value == Approx(7.7).margin(0.05));
    CHECK(alike.sd == Approx(4.1).margin(0.05));
}

TEST_CASE("cases that agree leave doubt by their number, and many exact ones the spread that they show") {
    const auto sdOf = [](std::size_t count) {
        return nextCase(std::vector<CaseEstimate>(count, CaseEstimate{1, 0.05}), 0.5).sd;
    };
    CHECK(sdOf(3) > sdOf(6));
    CHECK(sdOf(6) > sdOf(30));
    CHECK(sdOf(30) > 0.05 / std::sqrt(30.0));
    std::vector<CaseEstimate> spread;
    for (int i = 0; i < 200; ++i)
        spread.push_back({i % 2 == 0 ? 0.8 : 1.2, 0.001});
    CHECK(nextCase(spread, 0.5).sd == Approx(0.2).epsilon(0.05));
    CHECK(nextCase({}, 0.5).sd == 0.5);
}
