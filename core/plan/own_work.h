// Work on dimensions that hang on nothing else: drop, checking, dampers, straps, player, pedals (computation 9.3).
#pragma once

#include "core/plan/core_work.h"

namespace hammerline {

/// One thing to do, with the way its dimension has to go where a word, not a number, asks for it.
struct OwnTask {
    NoteTask task;
    NoteNumber note{};
    double way = 0; // sign of the wanted change
};

/// After the coupled work of the note: what still asks for it, by what the states say then.
std::vector<OwnTask> ownWork(Bench&, NoteNumber, const NotePlan&);

/// Notes read with words that stop them and no number (no let-off): a direction all the same.
std::optional<OwnTask> wordWork(Bench&, NoteNumber, const NotePlan&);

} // namespace hammerline
