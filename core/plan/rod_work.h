// One rod serves all notes: one order by all its readings, never one a note.
#pragma once

#include "core/plan/steps.h"

namespace hammerline {

/// Damper rise and half-blow. The middle of the readings decides for the rod (damper rise: at least three of them);
/// once it is set, a single note that is still off has work of its own; a slope or two halves are no matter of the
/// rod's length: look at hangers, hooks and hinges. The states of the notes follow the rod.
std::vector<Step> rodWork(Bench&);

/// Where a rod is out by what was read, but too little was read to turn it: the notes to read.
std::vector<ToRead> readForRods(const Bench&);

} // namespace hammerline
