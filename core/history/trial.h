// What trials of a screw say, and what they do not.
#pragma once

#include "core/history/looks.h"

namespace hammerline {

/// Notes on which an operation is tried at once (common practice, no source).
inline constexpr std::size_t kNotesOfTrial = 3;

enum class TrialSays : std::uint8_t {
    nothing,      // did the screws turn? Was it the right gauge?
    answers,      // as believed
    otherWay,     // on these notes; three others are asked before any direction turns
    turned,       // two sets of notes say the other way: the direction turns
    doesNotAnswer // three goes say nothing, or less than half of the least a sound screw gives
};
std::string_view key(TrialSays);

/// Answer over first guess, by least squares with each note's own start: sum(a' y')/sum(a'^2) of centred looks.
/// `sd`: for fewer than twelve notes the larger of what the gauge gives and what the notes' scatter gives; beyond that
/// White's (1980) HC1 over notes with 2 % of the answer in quadrature.
struct AnswerFit {
    double factor{}, sd{};
    int notes = 0;
};
/// `guess`: of the note's first effect, per unit. Notes whose residual lies beyond 3.5 by the modified z-score
/// (Iglewicz and Hoaglin) are left out.
AnswerFit fitAnswer(std::span<const LooksAtNote>, double guess);

/// A trial says something when the 99 % interval of its answer excludes zero.
bool saysSomething(const AnswerFit&);

struct TrialAnswer {
    OperationId operation;
    TrialSays says = TrialSays::nothing;
    int goes = 0;                  // of the note that was tried most often
    double factor = 0, sd = 0;     // answer over first guess
    bool known = false;            // well enough for a number of turns
    bool arms = false;             // punchings or pads answer otherwise than the key's arms allow
    std::vector<NoteNumber> notes; // tried, in the order in which they were
};
/// `least`: the low end of the band of sound screws, over the first guess.
TrialAnswer judgeTrial(OperationId, std::vector<LooksAtNote>, double guess, double least);

} // namespace hammerline
