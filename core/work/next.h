// The one thing to do next, as data; ui/words makes the sentence.
#pragma once

#include "core/work/standing.h"

namespace hammerline {

/// piano: there is none yet. bench: reference notes have to agree first. measureAgain: readings that cannot all be
/// true. look: a question that is asked before the plan is carried out. step: what the step asks for. wait: everything
/// that is left waits for parts. done: nothing is left. decide: what is out may have one cause, and is read again
/// first.
enum class NextKind : std::uint8_t { piano, bench, measureAgain, look, step, wait, done, decide };
std::string_view key(NextKind);

struct NextAct {
    NextKind kind = NextKind::done;
    std::optional<StepNow> step;          // the step that it belongs to
    std::vector<NoteNumber> notes;        // where, as far as it is known
    std::optional<DimensionId> dimension; // to read
    std::string_view question;            // of look: as the plan asks it
    std::set<std::string> supplies;       // of wait
};

/// What goes before the steps: readings and questions that the plan waits for.
struct BeforeWork {
    bool bench = false;
    std::vector<NoteNumber> doubtful;
    std::optional<DimensionId> suspect; // of the first of them
    std::vector<std::string_view> questions;
    std::vector<NoteNumber> heldBack; // out, and without a line: a cause that is not decided yet may explain them
    std::optional<DimensionId> heldBackIn;
};

NextAct nextAct(std::span<const StepNow>, const BeforeWork& = {});

} // namespace hammerline
