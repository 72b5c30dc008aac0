// One cell of measuring, read with what is known around it: the ground under single entries and files alike.
#pragma once

#include "core/intake/intake.h"

#include <array>

namespace hammerline {

/// What else is known of the note in this pass, by the row of the dimension.
struct KnownOfNote {
    std::array<std::optional<std::int64_t>, kDimensionCount> counts{};
    std::optional<std::int64_t>& operator[](DimensionId id) { return counts.at(id.row); }
    const std::optional<std::int64_t>& operator[](DimensionId id) const { return counts.at(id.row); }
};

struct CellContext {
    const Piano* piano{};
    Unit bare = Unit::mm;
    std::optional<char> decimal; // known: 1,250 is no question where ',' is the mark
    bool bothMarks = false;      // our own long form: whatever stands there was settled when it was typed
    bool dropFromString = false;
    bool heightsFromSlip = false; // the pass reads key heights over the key slip
    bool compare = true;          // ask where the other readings of the note contradict
    KnownOfNote known;
};

Outcome<Entry> readCell(std::string_view typed, Cell, const CellContext&);

/// What is refused and what is asked about, in the dimension's smallest unit; an absolute key height has limits of its
/// own (from the bed: bench-practice 2.3; over the key slip: common practice, no source).
struct Limits {
    std::int64_t refuseLow, refuseHigh, askLow, askHigh;
    bool refuses(std::int64_t count) const { return count < refuseLow || count > refuseHigh; }
    bool asks(std::int64_t count) const { return count < askLow || count > askHigh; }
};
Limits limitsOf(Cell, std::int64_t count, const Piano&, bool heightsFromSlip = false);

/// The quantity in the dimension's own kind: a share of the blow becomes mm for damper-start, mm become a share for
/// half-blow. Refuses wrongUnit where the blow is not known.
Outcome<TypedQuantity> readQuantityOf(std::string_view typed, DimensionId, const CellContext&);

/// Some bound that the quantity states lies outside what is taken without asking.
bool isDoubtful(const TypedQuantity&, Cell, const CellContext&);
/// The quantity is one of this note, not doubtful, and nothing in its writing has to be asked about.
bool isSound(const TypedQuantity&, Cell, const CellContext&);

} // namespace hammerline
