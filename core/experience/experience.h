// What the pianos of one book teach the next: how much a screw answers on actions built alike, with how far such pianos
// differ. It is a first guess and never a number of turns: that waits for the piano's own trial.
#pragma once

#include "core/history/record.h"
#include "core/stats/random_effects.h"

namespace hammerline {

/// Built alike where an answer can be carried over: kind of action, capstans, let-off screws.
bool builtAlike(const Piano&, const Piano&);

struct Experience {
    OperationId operation;
    std::optional<KeyColour> keys; // where naturals and sharps differ
    DimensionId dimension;         // what the operation is for
    RandomEffects others;          // change of the dimension per unit of the operation, trade units
    double catalogue{};            // the first guess without experience
};

/// Answers that at least three other pianos built alike have learned (its own are left out by uuid), in the order of
/// operations.
std::vector<Experience> experienceFor(const Piano&, std::string_view uuid, std::span<const PianoRecord> others);

} // namespace hammerline
