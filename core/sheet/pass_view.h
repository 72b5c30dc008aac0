// One pass as it is looked at: everything that window, paper and command line show of it, reckoned in one place.
#pragma once

#include "core/causes/causes.h"
#include "core/comparison/comparison.h"

namespace hammerline {

struct PassView {
    Pass pass; // heights made relative
    SpecSheet sheet;
    Review review;
    std::vector<Cell> stale;
    std::vector<Cause> causes;
    std::array<Ratio, 2> ratio; // by KeyColour
};

/// The sheet in use: the piano's own or edited one, else the built-in one of its name, else the action's default.
SpecSheet sheetOf(const PianoRecord&);

/// Refuses noSuchPass. `sheet`: another one than the piano's.
Outcome<PassView> viewPass(const PianoRecord&, int pass, Rule = Rule::plain,
                           const std::optional<SpecSheet>& sheet = {});

} // namespace hammerline
