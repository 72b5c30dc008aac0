// What a person does at a line of the adjustment list: ticks it off as set to the aim or with what was really done, or
// says that the screw does not turn.
#pragma once

#include "ui/stations/line_rows.h"
#include "ui/workbench.h"

namespace hammerline {

/// Ticks a step of the bench's plan; without an amount it was set to the aim. The first tick freezes the plan in the
/// same act. A step that is ticked already is corrected. Refuses what the book refuses.
Outcome<void> tickOff(Workbench&, const Step&, std::optional<double> amount);

/// The finding's part of a step that turns a screw: "let-off-screw", "capstan"; empty: no screw.
std::string_view screwOf(const Step&);
/// Whether the screw of a step stands in the survey as one that does not turn.
bool isStopped(const PianoRecord&, const Step&);
/// What the lines of a plan show of what was done: "to aim", "1/8 turn", "0.15 mm", with a minus where it went against
/// the line's direction; and which are stopped.
LineStates lineStates(const PianoRecord&, const Plan&);
/// Readings of the plan's pass and later ones that were typed after the plan was kept; none of a plan not yet kept.
int newerReadings(const PianoRecord&, const Plan&);

/// A screw that does not turn is a finding: to be mended before the note is regulated. Steps without a screw are left:
/// false.
Outcome<bool> noteSeized(Workbench&, const Step&);

} // namespace hammerline
