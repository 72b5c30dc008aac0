// What a plan is expected to leave: readings with their uncertainty, what is stale, what is worth reading next
// (computation 9.6, 9.7).
#pragma once

#include "core/plan/bench.h"

namespace hammerline {

/// Fills expected, becomesStale and readNext from the states the steps leave.
void lookAhead(const Bench&, Plan&);

} // namespace hammerline
