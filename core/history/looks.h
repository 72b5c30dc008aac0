// The looks at one note while one screw of it is turned: what a trial and the work after it are judged by.
#pragma once

#include "core/history/record.h"
#include "core/history/states.h"

namespace hammerline {

/// A reading of the dimension that the operation serves, `amount` turned or added since the first look. Other work in
/// between is taken off by its prediction, with its variance.
struct LookAfterTurns {
    double amount{};   // units of the operation
    double value{};    // trade units
    double variance{}; // of the reading and of what was taken off
};

/// The looks at one note in one visit. Another day, or another per cent of wood moisture, begins a new visit: what
/// changed over it may be the wood's.
struct LooksAtNote {
    NoteNumber note;
    std::vector<LookAfterTurns> looks; // at least two, with at least two amounts
    std::int64_t order{};              // of the first turn: the sequence in which notes were tried
    int goes{};                        // how often it was worked between looks
};

/// By note. The first look is the first reading of that cell weighed with its neighbours' where seven of the section
/// were read: the raw reading chose the note and the amount, and its error would teach (a true 6 mm a turn is learned
/// as 7 to 10; empirical Bayes, Efron and Morris 1975, unbiased in simulation).
std::vector<LooksAtNote> looksOf(const PianoRecord&, OperationId, const Answers& believed, double ratio);

} // namespace hammerline
