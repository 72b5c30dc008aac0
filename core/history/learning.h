// Learning how this piano answers, from ticked amounts and the readings on both sides (computation 8).
#pragma once

#include "core/history/record.h"

namespace hammerline {

/// The responses of this piano: first guesses, replaced where pairs teach better. Heights in the passes are those
/// relative to the piano's own line (judge's withRelativeHeights), here and below.
std::vector<Response> learnedResponses(const PianoRecord&, std::array<double, 2> ratio);

/// What is known of a cell after everything up to now (computation 8): value and standard uncertainty, smallest units
/// as doubles in trade units (mm, g). `expected`: no fresh reading since the last operation that moved it.
struct CellState {
    double value{};
    double sd{};
    bool expected = false;
};
using State = std::map<Cell, CellState>;
State stateOf(const PianoRecord&, int pass, std::span<const Response>, std::array<double, 2> ratio);

} // namespace hammerline
