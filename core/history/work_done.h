// What a person says of a step of the work, with all that follows from it for the book.
#pragma once

#include "core/history/record.h"

namespace hammerline {

struct WorkDone {
    WorkSaid said;
    std::vector<Finding> mended;
    std::vector<Done> done;
    std::optional<FrozenPlan> plan; // of those lines, where it is not in the book yet
    bool empty() const { return said.marks.empty() && said.takenBack.empty() && mended.empty() && done.empty(); }
};

} // namespace hammerline
