// The check list as plain data: what is out, worst first, and what to measure again.
#pragma once

#include "core/sheet/pass_view.h"

namespace hammerline {

struct CheckLine {
    const Judged* judged = nullptr;
    KeyColour colour{};
    std::size_t section = 0;
    const Zone* zone = nullptr; // null where the sheet says nothing
};

struct CheckSheet {
    std::vector<CheckLine> lines; // outside, undecided, uneven or stepped; worst first
    std::vector<DimensionId> asked;
    int notesOut = 0; // notes with at least one reading outside
    int notesRead = 0;
};

/// The view must outlive the sheet.
CheckSheet checkSheet(const PianoRecord&, const PassView&);

/// Whether a reading belongs on a list of what is out: outside, undecided, uneven or a step off its neighbours.
bool stands(const Judged&);

} // namespace hammerline
