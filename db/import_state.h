// Where the readings of an import stand: passes found or made, what they replace, what is settled at the end.
#pragma once

#include "db/brought_acts.h"
#include "db/stores.h"

#include <set>

namespace hammerline {

/// A cell of a pass that had readings before: what stood there, and which trials the import has given.
struct GivenCell {
    CellTrials before;
    std::set<int> given;
    bool later = false; // what stands came later than the import
};

struct GivenPass {
    PassRow row;
    bool made = false;                               // by this import
    bool hadRows = false;                            // readings to look up and to replace
    std::map<std::string_view, std::string> heights; // that came: datum and a height over it, as it was typed
    std::map<Cell, GivenCell> cells;
    std::map<DimensionId, std::string> references; // said by the import, written at its end
};

class ImportState {
public:
    /// The act that a reading came with; none: this import.
    using Origin = std::function<std::optional<ActId>(const Reading&)>;
    ImportState(ActUnderWay&, std::int64_t piano, BroughtActs&, Origin);

    /// By the number that the import knows the pass by.
    GivenPass& at(int pass);
    int add(const NewPass&);
    int add(const NewPass&, const Uuid&, Start);
    /// As the book had it when the import began; made where there is none.
    int named(std::string_view numberOrLabel, std::string_view label);
    /// One that stands in the book just so, or later (by its order, where it has one), is not written.
    void put(int pass, const NewReading&);
    void markNotFitted(int pass, Cell);
    void finish();
    /// After finish: refuses otherDatum where heights came that are over another datum than their pass's.
    void requireOneDatum() const;

private:
    void writeReferences(const GivenPass&);

    ActUnderWay& m_act;
    std::int64_t m_piano;
    BroughtActs& m_brought;
    Origin m_origin;
    std::vector<GivenPass> m_passes;
    std::size_t m_before = 0; // passes that the book had
    std::map<std::string, int, std::less<>> m_names;
};

} // namespace hammerline
