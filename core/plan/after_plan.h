// A pass as a plan is expected to leave it: its readings with the plan's expected values in their places. What is
// reckoned from a pass (account, stroke, drawing) is reckoned from this one by the same functions.
#pragma once

#include "core/plan/plan.h"

namespace hammerline {

/// `pass` with heights made relative, the plan's own. Cells the plan does not speak of stay as they were read.
Pass passAfter(const Pass&, const Plan&);

/// One distance put in the place of what was read there, in the trade unit of its dimension: for asking "what if".
struct Supposed {
    Cell cell;
    double value = 0;
};
Pass passSupposing(const Pass&, std::span<const Supposed>);

/// What follows at the note when its key's front is raised by `mm` with balance punchings, by the key lever
/// (core/operation): dip and lost motion of a vertical, dip and blow of a grand. A capstan that comes up beyond the
/// lost motion there is lifts the hammer off its rail: lost motion 0 and a blow shorter by R times what is beyond.
/// Readings that are not there do not follow.
std::vector<Supposed> raisedFront(const Piano&, const Pass&, NoteNumber, double mm, double ratio);

} // namespace hammerline
