// A plan and a comparison as a terminal shows them: tables, or with --spoken whole sentences.
#pragma once

#include "core/comparison/comparison.h"
#include "core/plan/plan.h"
#include "core/sheet/pass_view.h"

namespace hammerline::app {

void sayPlan(const Plan&, const PianoRecord&, bool json);
void sayComparison(const Comparison&, const FinishLine&, bool json);

} // namespace hammerline::app
