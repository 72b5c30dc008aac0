// What a person said by hand of a step of the order of work: done, at which notes, or not needed here and why.
#pragma once

#include "core/piano/piano.h"

namespace hammerline {

enum class MarkState : std::uint8_t { done, notHere };
std::string_view key(MarkState);
/// Refuses usage.
Outcome<MarkState> parseMarkState(std::string_view);

struct WorkMark {
    std::string step;               // its id in the order of work
    std::optional<NoteNumber> note; // none: the whole step
    MarkState state = MarkState::done;
    std::string remark;       // why it is not needed, or what was seen
    std::int64_t seconds = 0; // spent on it, where said
    std::int64_t order = 0;   // place of its act in the book
    std::int64_t at = 0;      // microseconds since 1970 UTC
    friend bool operator==(const WorkMark&, const WorkMark&) = default;
};

/// What is said of a step anew: marks that are made, and marks that are taken back (their step and note).
struct WorkSaid {
    std::vector<WorkMark> marks;
    std::vector<std::pair<std::string, std::optional<NoteNumber>>> takenBack;
};

} // namespace hammerline
