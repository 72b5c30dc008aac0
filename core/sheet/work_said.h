// A step of the work said to be done, not done after all, or not needed here: what that means for the book.
#pragma once

#include "core/history/work_done.h"
#include "core/plan/plan.h"

namespace hammerline {

struct StepSaid {
    enum class What : std::uint8_t { done, undone, notHere };
    std::string step;
    What what = What::done;
    std::vector<NoteNumber> notes; // empty: the whole step
    std::string remark;            // of notHere: why, and required
    double minutes = 0;            // spent on it
};

/// Done also mends the findings of the step and ticks the open lines of the plan at those notes as set to their aim.
/// Undone takes the marks back and leaves findings and lines as they are: undo takes those back.
/// `uuid`: of the plan, where it has to be frozen for its lines. Refuses noSuchStep, reasonMissing.
Outcome<WorkDone> sayStep(const StepSaid&, const PianoRecord&, const Plan*, const std::string& uuid);

} // namespace hammerline
