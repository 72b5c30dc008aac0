// What a person says of a step of the work: done, done at some notes, not after all, not needed here.
#pragma once

#include "core/sheet/work_said.h"
#include "ui/workbench.h"

namespace hammerline {

struct SaidOfStep {
    bool nothing = false; // there was nothing of it to take back
    int lines = 0;        // of the plan that were ticked with it
};

/// Kept as one act, with the findings and lines that go with it; a plan that was only thought is frozen then. Refuses
/// what the book refuses, and a step that is not needed without a reason.
Outcome<SaidOfStep> keepSaid(Workbench&, const StepSaid&);
/// The notes of the step that were kept last, to be taken back.
StepSaid lastKept(const std::string& step, const PianoRecord&);

} // namespace hammerline
