// The estimate: minutes come from the survey, sums are exact, and nothing is priced that the user did not price.
#include "core/sheet/estimate.h"

#include <catch2/catch.hpp>

using namespace hammerline;

namespace {

PianoRecord worn() {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::upright);
    record.piano.name = "Parlour upright";
    record.specName = "upright";
    for (const char* said : {"1-88 bridle-strap rotted replace-set", "20,21 hammer-flange tight repin"})
        for (const Finding& finding : parseFindings(said, record.piano).value_or(std::vector<Finding>{}))
            record.findings.push_back(finding);
    return record;
}

double repairMinutes(const PianoRecord& record) {
    return wholeJob(record.findings, record.piano, jobTerms(record.preferences)).minutesOpen;
}

} // namespace

TEST_CASE("amounts are read with either mark and written with two decimals at least") {
    CHECK(parseMoney("12") == 12'000);
    CHECK(parseMoney("12,5") == 12'500);
    CHECK(parseMoney("0.455") == 455);
    CHECK(parseMoney("10000000") == 10'000'000'000);
    for (const char* wrong : {"", "-1", "1.", ".5", "1.2345", "12 EUR", "1e3", "10000001", "123456789"})
        CHECK_FALSE(parseMoney(wrong));
    CHECK(moneyText(12'500) == "12.50");
    CHECK(moneyText(455) == "0.455");
    CHECK(moneyText(0) == "0.00");
}

TEST_CASE("terms are read, refused by name, and taken back by an empty value") {
    CHECK(parseEstimateTerm("hour=60") == std::pair<std::string, std::string>{"estimate.hour", "60"});
    CHECK(parseEstimateTerm("hour=")->second.empty());
    CHECK(parseEstimateTerm("part.bridle-strap=0,8"));
    CHECK(parseEstimateTerm("part.gold=1").error().code == RefusalCode::unknownPart);
    for (const char* wrong : {"hour=cheap", "wage=60", "allowance=201", "hour", "currency=more than twelve letters"})
        CHECK(parseEstimateTerm(wrong).error().code == RefusalCode::usage);
    const EstimateTerms none = estimateTerms({{"estimate.hour", ""}, {"spare-percent", "5"}});
    CHECK_FALSE(none.hour);
    CHECK(none.allowance == 10);
    CHECK(estimateTerms({{"estimate.exclude", "tuning; ;new  strings"}}).exclusions ==
          std::vector<std::string>{"tuning", "new strings"});
}

TEST_CASE("without prices there are minutes and no amount; the minutes are those of the whole job") {
    const PianoRecord record = worn();
    REQUIRE_FALSE(record.findings.empty());
    const Estimate made = estimate(record);
    CHECK(made.minutes == Approx(workOrder(record).minutesOpen));
    CHECK(made.allowanceMinutes == Approx(repairMinutes(record) / 10));
    double inSteps = 0;
    for (const EstimateStep& step : made.steps)
        for (const auto& [part, minutes] : step.parts)
            inSteps += minutes;
    CHECK(inSteps == Approx(repairMinutes(record)));
    CHECK_FALSE(made.measured);
    CHECK(made.unseen > 0);
    CHECK_FALSE(made.labour);
    CHECK_FALSE(made.material);
    CHECK_FALSE(made.total);
    CHECK(made.unpriced > 0);
}

TEST_CASE("prices multiply exactly, in the user's currency, and what is not priced is counted") {
    PianoRecord record = worn();
    record.preferences = {{"estimate.hour", "60"},
                          {"estimate.travel", "25,50"},
                          {"estimate.currency", "Taler"},
                          {"estimate.part.bridle-strap", "0.335"},
                          {"estimate.allowance", "20"}};
    const Estimate made = estimate(record);
    CHECK(made.allowanceMinutes == Approx(repairMinutes(record) / 5));
    // at 60 an hour a minute costs 1.00
    Money steps = 0;
    for (const EstimateStep& step : made.steps) {
        CHECK(*step.cost == Approx(step.minutes * 1000).margin(5));
        steps += *step.cost;
    }
    CHECK(*made.labour == Approx(static_cast<double>(steps) + made.allowanceMinutes * 1000).margin(5));
    for (const EstimatePart& part : made.parts)
        if (part.line.part == "bridle-strap") CHECK(*part.cost == Approx(part.line.quantity * 335).margin(5));
    CHECK(*made.total == *made.labour + *made.material + 25'500);
    CHECK(*made.total % 10 == 0); // whole hundredths: what stands on paper adds up
}
