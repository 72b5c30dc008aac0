// What was worked on and has not been read since: the cells of a round of reading after a round of work.
#pragma once

#include "core/history/record.h"

namespace hammerline {

/// Cells read in pass `current` or before it whose reading was followed by work that moves it, and that no pass between
/// that reading and `current` has read again; in the order of notes. Read in `current` they stay among them, so that
/// the list does not change while it is walked.
std::vector<Cell> adjustedCells(const PianoRecord&, int current);

} // namespace hammerline
