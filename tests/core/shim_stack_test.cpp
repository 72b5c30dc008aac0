// Source of the cases: tests/reference/shim_stack_cases.json (brute force over all multisets and an independent dynamic
// programme agree on all 29).
#include "core/plan/plan.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <rapidcheck.h>

#include <fstream>

using namespace hammerline;

namespace {

constexpr std::int64_t kThou = 25'400; // nm

nlohmann::json cases() {
    std::ifstream file(std::string(HAMMERLINE_SOURCE_DIR) + "/tests/reference/shim_stack_cases.json");
    REQUIRE(file);
    return nlohmann::json::parse(file)["cases"];
}

/// "17/2" thou as nanometres.
std::int64_t nmOf(const std::string& thou) {
    const auto bar = thou.find('/');
    const std::int64_t over = std::stoll(thou.substr(0, bar)) * kThou;
    if (bar == std::string::npos) return over;
    const std::int64_t under = std::stoll(thou.substr(bar + 1));
    REQUIRE(over % under == 0);
    return over / under;
}

std::vector<Length> customaryStock() {
    std::vector<Length> stock;
    for (const int thou : {3, 5, 7, 10, 12, 15, 20, 30, 40, 60})
        stock.push_back(Length{thou * kThou});
    return stock;
}

} // namespace

TEST_CASE("shim stacks are the best of all stacks that the stock allows") {
    int read = 0;
    for (const auto& each : cases()) {
        INFO(each["id"] << " " << each["name"]);
        std::vector<Length> stock;
        std::vector<int> counts;
        for (const int thou : each["thickness_thou"]) {
            stock.push_back(Length{thou * kThou});
            if (!each["stock"].is_null()) counts.push_back(each["stock"].value(std::to_string(thou), 0));
        }
        const auto stack = shimStack(Length{nmOf(each["target_thou"])}, stock, counts, each["max_pieces"]);
        std::vector<std::int64_t> pieces, preferred;
        for (const Length piece : stack.pieces)
            pieces.push_back(piece.nm / kThou);
        for (const int piece : each["preferred"])
            preferred.push_back(piece);
        CHECK(pieces == preferred);
        CHECK(std::abs(stack.error.nm) * 1000 ==
              std::llround(1000.0 * static_cast<double>(nmOf(each["best_abs_error_thou"]))));
        ++read;
    }
    CHECK(read == 29);
}

TEST_CASE("more stock never gives a worse stack") {
    CHECK(rc::check([] {
        const auto all = customaryStock();
        const auto target = Length{*rc::gen::inRange<std::int64_t>(1, 5'000'000)};
        std::vector<int> few, more;
        for (std::size_t i = 0; i < all.size(); ++i) {
            few.push_back(*rc::gen::inRange(0, 3));
            more.push_back(few.back() + *rc::gen::inRange(0, 2));
        }
        RC_ASSERT(std::abs(shimStack(target, all, more).error.nm) <= std::abs(shimStack(target, all, few).error.nm));
        RC_ASSERT(std::abs(shimStack(target, all).error.nm) <= std::abs(shimStack(target, all, more).error.nm));
    }));
}

TEST_CASE("a stack of punchings is what it says it is") {
    CHECK(rc::check([] {
        const auto stock = customaryStock();
        const auto target = Length{*rc::gen::inRange<std::int64_t>(-100'000, 9'000'000)};
        const auto stack = shimStack(target, stock);
        std::int64_t sum = 0;
        for (const Length piece : stack.pieces)
            sum += piece.nm;
        RC_ASSERT(stack.pieces.size() <= 6U);
        RC_ASSERT(stack.error.nm == sum - target.nm);
        RC_ASSERT(std::is_sorted(stack.pieces.rbegin(), stack.pieces.rend()));
    }));
}

TEST_CASE("turns are said as a hand can do them") {
    // scenarios S2, S3, S5 of bench-practice 6
    CHECK(handAmount(-0.136, 0.25) == "about-1/8");
    CHECK(handAmount(0.203, 0.25) == "under-1/4");
    CHECK(handAmount(-0.373, 0.25) == "1/4-look-then-on");
    CHECK(handAmount(0.20, 0.5) == "under-1/4");
    CHECK(handAmount(-0.375, 0.5) == "about-3/8");
    CHECK(handAmount(1.0, 0.5) == "1/2-look-then-on");
    CHECK(handAmount(0.33, 0.125) == "1/8-look-then-on");
    CHECK(handAmount(0.06, 0.25) == "touch");
    CHECK(handAmount(0, 0.25).empty());
}

TEST_CASE("no amount of let-off is ever said beyond a quarter turn at a go") {
    CHECK(rc::check([] {
        const double turns = *rc::gen::inRange(-4000, 4000) / 1000.0;
        const std::string_view words = handAmount(turns, 0.25);
        for (const std::string_view wrong : {"1/2", "3/8", "5/8", "3/4", "7/8", "about-1 ", "2"})
            if (wrong != "2") RC_ASSERT(words.find(wrong) == std::string_view::npos);
        RC_ASSERT(words != "about-1" && words != "under-1");
    }));
}
