// What the job is likely to take: minutes by step and part, parts to order, an allowance for what shows later; prices
// only where the user filled them in. Nothing is invented: a line without a price has none, and the sum says so.
#pragma once

#include "core/sheet/work_order.h"

namespace hammerline {

/// Thousandths of the user's currency: sums are exact.
using Money = std::int64_t;

/// Filled by the user and kept with the piano (estimate.hour, .travel, .currency, .allowance, .exclude,
/// .part.SUPPLY). Prices of parts: of a piece or set, of a metre of what is sold by length, of 100 cm2 of a sheet.
struct EstimateTerms {
    std::optional<Money> hour, travel;
    std::string currency;  // free text, may be empty
    double allowance = 10; // per cent of the repairs, for what is found once it is apart (common practice,
                           // no source)
    std::vector<std::string> exclusions; // what is not part of it, a line each
    std::map<std::string, Money> parts;  // by supply
};
EstimateTerms estimateTerms(const std::map<std::string, std::string>& preferences);

/// "hour=65", "part.centre-pin=0,45", "currency=EUR", "allowance=15", "exclude=tuning; new strings"; an empty value
/// takes the field back. Gives name and value of the preference. Refuses usage, unknownPart.
Outcome<std::pair<std::string, std::string>> parseEstimateTerm(std::string_view);

/// "12.5", "12,50", "1200": at most three decimals. None where it is no amount from 0 to 10 million.
std::optional<Money> parseMoney(std::string_view);
/// "12.50", "0.455": two decimals at least.
std::string moneyText(Money);

struct EstimateStep {
    std::string_view id; // as WorkOrderStep
    double minutes = 0;
    std::vector<std::pair<std::string_view, double>> parts; // open repairs of the step, minutes
    bool waits = false;
    std::optional<Money> cost;
};
struct EstimatePart {
    PartsLine line;
    std::optional<Money> price, cost; // of one unit; of the line
};
struct Estimate {
    std::vector<EstimateStep> steps; // those with something open
    std::vector<EstimatePart> parts;
    std::vector<std::string_view> specialist; // parts referred: no minutes are known for them
    double minutes = 0, allowanceMinutes = 0;
    bool measured = false; // the regulating is counted from a plan; else it will show once it is measured
    int unseen = 0;        // parts that were not looked at
    std::optional<Money> labour, material, travel, total;
    int unpriced = 0; // parts lines without a price: the sum leaves them out
    /// Steps of the work of which other pianos say what they really took the same person; minutes customary beside.
    struct Took {
        std::string_view step; // as StepOfWork
        double customary = 0;
        TaughtMinutes really;
    };
    std::vector<Took> took;
    EstimateTerms terms;
};
Estimate estimate(const PianoRecord&);

} // namespace hammerline
