// What the last pass says of the dimensions that a step is for.
#pragma once

#include "core/work/standing.h"

namespace hammerline::work {

struct ReadsOfStep {
    std::vector<NoteNumber> unread, outside; // unread: of the dimensions that are read by number at every note
    std::int64_t order = 0;                  // of the newest reading
    bool any = false, well = false;          // something was read; enough of it to know
    bool outsideWords = false;               // a word says that something is to be done
    std::optional<DimensionId> first;        // the first that is not well read, or outside
    std::optional<DimensionId> firstUnread;  // whose notes `unread` are
};
ReadsOfStep readsOf(const StepOfWork&, const WorkFacts&);

/// Notes of the first that are not in the second.
std::vector<NoteNumber> without(const std::vector<NoteNumber>&, const std::vector<NoteNumber>& taken);

} // namespace hammerline::work
