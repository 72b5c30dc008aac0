// What a person says was really done: turns of a screw or millimetres, typed (computation 2, 5).
#pragma once

#include "core/operation/operation.h"

namespace hammerline {

/// "1/8", "0,25", "-1/4", "1 1/2 turns": turns, exact to 1e-7, for AmountUnit::turn. For AmountUnit::mm any length as
/// it is typed everywhere else: a bare number is mm, a bare fraction inches. Refuses wrongUnit (a length for a screw,
/// a turn for a length) and unreadable (a word, a gap, an inequality, a pair).
Outcome<double> parseAmount(std::string_view typed, AmountUnit);

} // namespace hammerline
