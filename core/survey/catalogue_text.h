// How a row of the parts catalogue is written down: the words of bench-practice 3, nearly as they stand there.
#pragma once

#include "core/survey/survey.h"

namespace hammerline::survey {

/// Lists are separated by blanks. A fault is `word` or `word>usual-remedy` (else the row's first remedy);
/// a remedy is `word`, or `word=` where the part itself is ordered for it, or `word=supply`. A remedy whose word ends
/// in "-set" is always the whole set. `stale` holds the letters of the table: H D M B O P A K S and the names of
/// further dimensions; "all" for everything. `mustIf` lists the faults or remedies that alone make it a must, or
/// "over-a-tenth".
struct Row {
    int number;
    std::string_view key, kinds, faults, remedies;
    Must must;
    std::string_view mustIf, stale;
    PartUnit unit;
    std::array<double, 2> minutes;
    bool wholeSet;
    JobStage stage;
    std::string_view caution = {};
    bool (*has)(const Piano&) = nullptr;
    bool damper = false;
};

// Units as the rows name them.
inline constexpr auto perNote = PartUnit::note;
inline constexpr auto perPiano = PartUnit::piano;

/// Rows 1 to 33: action, hammers, repetition, let-off, rests.
std::span<const Row> actionRows();
/// Rows 34 to 70: dampers, keys, capstans, trapwork, what is outside the action, player.
std::span<const Row> furtherRows();

} // namespace hammerline::survey
