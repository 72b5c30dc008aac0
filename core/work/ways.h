// The ways to the work: action out, stack off, keys off. A way is opened when the step that is next lies behind it, and
// closed before the next one that needs it closed.
#pragma once

#include "core/work/standing.h"

namespace hammerline::work {

/// What the ways go by: when the newest word on each step was said (0: never).
struct WaysKnown {
    const Piano& piano;
    bool whole = true; // the whole job is wanted, not only what readings and findings ask for
    std::map<std::string_view, std::int64_t> saidAt;
};

/// Opens, or opens anew, the steps that lead to the next step and those that close a way behind it. `held` are the
/// same steps with what they wait for: the first that is open there is the next. What leads to nothing now is not
/// needed, and said to come later where something behind it is still to do.
void openTheWays(std::vector<StepNow>& steps, std::span<const StepNow> held, const WaysKnown&);

} // namespace hammerline::work
