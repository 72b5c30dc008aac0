// What the pianos of one book teach the next: how much a screw answers on actions built alike, their ratio, how well
// this person reads and how long a step really takes, with how far such pianos differ. First guesses, and never a
// number of turns: that waits for the piano's own trial.
#pragma once

#include "core/history/record.h"
#include "core/stats/random_effects.h"

namespace hammerline {

/// Built alike where an answer can be carried over: kind of action, capstans, let-off screws.
bool builtAlike(const Piano&, const Piano&);

/// What one piano has taught, by value: a book of many pianos need not be held at once.
struct Lesson {
    std::string uuid, worker; // worker: who works on it, may be empty
    Piano piano;
    std::map<OperationId, CaseEstimate> answers;       // of its own trials and work, over the customary first guess
    std::array<std::optional<CaseEstimate>, 2> ratio;  // from readings
    std::map<DimensionId, CaseEstimate> uncertainties; // logarithm of the standard uncertainty by repeats
    std::map<std::string, double> minutes;             // of steps that were done, where time was said
    bool empty() const { return answers.empty() && !ratio[0] && !ratio[1] && uncertainties.empty() && minutes.empty(); }
};
Lesson lessonOf(const PianoRecord&);

/// What is expected of the next piano, by at least three others (its own lesson is left out by uuid), as nextCase of
/// core/stats reckons it with the customary band as what is believed of the spread beforehand; never surer than 5 %
/// (ratio: 1 %). Punchings and pads go by each piano's own arms and are not taught. Uncertainties and minutes are of
/// the same person (where both pianos say who), uncertainties of the same kind of gauge, between that of the best gauge
/// and twice that of a rule.
Taught taughtBy(const Piano&, std::string_view uuid, std::string_view worker, std::span<const Lesson>);

/// The same, put where its plan takes it.
void teach(PianoRecord&, std::span<const Lesson>);

struct Experience {
    OperationId operation;
    std::optional<KeyColour> keys; // where naturals and sharps differ
    DimensionId dimension;         // what the operation is for
    RandomEffects others;          // change of the dimension per unit of the operation, trade units
    double catalogue{};            // the first guess without experience
    bool used = false;             // it is the first guess of this piano's plan
    double low95{}, high95{};      // of the guess, as the plan takes it
};

/// Answers that at least three other pianos built alike have learned, in the order of operations.
std::vector<Experience> experienceFor(const Piano&, std::string_view uuid, std::span<const Lesson>);

} // namespace hammerline
