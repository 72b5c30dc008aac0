#include "core/plan/after_plan.h"

namespace hammerline {

Pass passSupposing(const Pass& pass, std::span<const Supposed> supposed) {
    Pass out = pass;
    for (const Supposed& each : supposed) {
        Measured& measured = out.cells[each.cell];
        Reading reading;
        reading.count = fromTrade(each.value, row(each.cell.dimension).kind);
        measured.trials = {reading};
        measured.notFitted = false;
    }
    return out;
}

Pass passAfter(const Pass& pass, const Plan& plan) {
    std::vector<Supposed> expected;
    expected.reserve(plan.expected.size());
    for (const Expected& each : plan.expected)
        expected.push_back({each.cell, each.value});
    return passSupposing(pass, expected);
}

} // namespace hammerline
