// The plan that is meant: the frozen one, or a new one by other options; and what a tick of it says was done.
#pragma once

#include "core/plan/plan.h"

namespace hammerline {

/// Without options: the newest plan that was frozen for this pass by a print or a tick, else a touch-up made now.
/// With options: a plan made now. Refuses noSuchPass.
Outcome<Plan> planInForce(const PianoRecord&, const SpecSheet&, int pass, const std::optional<PlanOptions>&);

/// A frozen plan as it was kept, its directions in the words of the set-up as it is now: a capstan that the plan sends
/// up goes up, also when the set-up has since learned which way round that is. Refuses badJson.
Outcome<Plan> thaw(const FrozenPlan&, const Piano&);

/// Freezes a plan under a uuid; one that is frozen already stays as it is.
FrozenPlan freeze(const Plan&, std::string uuid);

/// What a tick says: the step with its own amount, with another, or "set to the aim" (no amount).
/// Refuses noSuchStep with the id as offending.
struct Tick {
    std::string step;
    std::optional<double> amount; // in the sense of the operation's row, mm or turns
    bool toAim = false;
};
Outcome<Done> doneBy(const Plan&, const Tick&);
/// The same for every step.
std::vector<Done> allDone(const Plan&);

/// What is asked before the plan is acted on, as the survey stands now: a plan that was frozen keeps no answered
/// question. First what the survey asks of every piano, then the deciding checks of this plan's causes.
std::vector<std::string_view> openQuestions(const Plan&, const PianoRecord&);

} // namespace hammerline
