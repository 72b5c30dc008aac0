// One round of measuring: cells with their trials, what was asked once for the pass, and the order of walking.
#pragma once

#include "core/piano/dimension.h"

#include <map>

namespace hammerline {

/// One stored reading. A word has no count; an inequality or pair says so by `relation`.
/// `order` is the place of its act in the book: later acts have larger numbers (staleness needs it).
struct Reading {
    std::int64_t count{};
    std::int64_t upper{};
    Relation relation = Relation::equal;
    std::optional<WordId> word;
    std::string typed;     // as it was typed
    std::string typedUnit; // key of the unit that held, empty for words
    bool taken = false;    // doubtful, taken as typed on purpose
    std::string reason;    // why, where given
    int trial = 1;
    std::int64_t order = 0;
    std::int64_t at = 0; // microseconds since 1970 UTC
    friend bool operator==(const Reading&, const Reading&) = default;
};

/// The state of one cell of a pass.
struct Measured {
    std::vector<Reading> trials; // current readings, by trial number
    bool notFitted = false;      // said to be missing at this note by a person
    bool disputed = false;       // two current readings after a merge
    std::size_t superseded = 0;  // earlier readings of this pass that lie under it

    bool missing() const { return trials.empty(); }
    /// Mean of the trials that are plain numbers, rounded half away from zero; none for words and inequalities.
    std::optional<std::int64_t> value() const;
    std::optional<WordId> word() const;
    const Reading* latest() const { return trials.empty() ? nullptr : &trials.back(); }
    std::int64_t order() const { return trials.empty() ? 0 : trials.back().order; }
    friend bool operator==(const Measured&, const Measured&) = default;
};

struct Climate {
    double celsius{};
    double humidity{}; // per cent
    friend bool operator==(const Climate&, const Climate&) = default;
};

struct Pass {
    int number{}; // 1 = as found
    std::string label;
    std::string uuid;
    std::int64_t startedAt{};
    std::int64_t order{};
    std::optional<Climate> climate;
    std::optional<double> temperature, humidity; // when only one of them is known
    bool stackIn = false;
    bool weightsOn = false;
    bool onBench = false; // the key frame on the bench, not in the piano
    /// How a line that heights are read against hangs, as it was said (readLineSag); empty: straight.
    std::string lineSag;
    std::map<DimensionId, std::string> references; // asked once per pass (computation 15)
    std::map<Cell, Measured> cells;

    const Measured* at(Cell) const;
    std::optional<std::int64_t> value(Cell) const;
    std::string_view referenceOf(DimensionId) const; // as said, else the catalogue's default
    std::size_t readingCount() const;
    friend bool operator==(const Pass&, const Pass&) = default;
};

/// Why the readings of a dimension in two passes do not stand beside each other (computation 15): "reference" (from
/// another reference, or the key pressed in another way), "stack", "weights", "bench" (read at the hammer on the bench
/// and in the piano: the strings are elsewhere); empty where they do.
std::string_view otherMethod(DimensionId, const Pass& from, const Pass& to);

/// Dimensions with at least one reading, in catalogue order.
std::vector<DimensionId> askedDimensions(const Pass&);

/// Notes that stand for the whole before all are read: of every section a natural near its lower end, a sharp in its
/// middle and a natural near its upper end (common practice, no source). Fewer where a section has not three notes.
std::vector<NoteNumber> sampleNotes(const Piano&);

enum class WalkOrder : std::uint8_t { up, naturalsThenSharps, everyNth, sectionEnds, listed };

/// The cells to visit, in order; cells that are not fitted are left out. `acrossFirst`: all dimensions of a note before
/// the next note. `listed` is used by WalkOrder::listed (for instance: only what was out).
std::vector<Cell> walk(WalkOrder, const Piano&, std::span<const DimensionId>, int n, bool acrossFirst,
                       std::span<const NoteNumber> listed);

} // namespace hammerline
