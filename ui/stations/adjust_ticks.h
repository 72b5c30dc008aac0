// What a person does at a line of the adjustment list: ticks it off as set to the aim or with what was really done, or
// says that the screw does not turn.
#pragma once

#include "ui/workbench.h"

namespace hammerline {

/// Ticks a step of the bench's plan; without an amount it was set to the aim. The first tick freezes the plan in the
/// same act. A step that is ticked already is corrected. Refuses what the book refuses.
Outcome<void> tickOff(Workbench&, const Step&, std::optional<double> amount);

/// A screw that does not turn is a finding: to be mended before the note is regulated. Steps without a screw are left:
/// false.
Outcome<bool> noteSeized(Workbench&, const Step&);

} // namespace hammerline
