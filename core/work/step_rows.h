// How a step of the order of work is written down: lists are words separated by blanks.
#pragma once

#include "core/work/work.h"

namespace hammerline::work {

/// kinds: U upright with wooden hammer flanges, B brass flange rail, D drop action, O overdamper, G grand, P with a
/// player stack. disturbs: dimensions by key, or "everything".
struct StepRow {
    std::string_view id, kinds;
    WorkPart part;
    std::string_view access, accessOfGrand, needs, disturbs, operations;
    std::array<double, 2> minutes;
    PartUnit per;
    std::string_view cautions, drawing;
};

std::span<const StepRow> rows();

} // namespace hammerline::work
