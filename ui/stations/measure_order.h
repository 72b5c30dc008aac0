// In which order Enter walks over the cells: the choice of a person, with the walk that core makes of it.
#pragma once

#include "ui/workbench.h"

#include <QString>

#include <map>

namespace hammerline {

struct EntryOrder {
    enum class Kind : std::uint8_t {
        oneDimension,
        noteByNote,
        naturalsThenSharps,
        everyNth,
        sectionEnds,
        onlyOut,
        ownList,
        settled, // what new punchings and felts have moved
        samples, // notes that stand for the whole
        adjusted // what was worked on and not read since
    };
    Kind kind = Kind::oneDimension;
    bool across = false; // all dimensions of a note before the next note
    int every = 8;
    std::vector<NoteNumber> listed; // ownList
    friend bool operator==(const EntryOrder&, const EntryOrder&) = default;
};

/// The order kept in the book for this piano: another piano has its own, a new one begins with one dimension. As text:
/// "every-nth every 8 across notes 1,8,15-20", parts that say nothing left out.
EntryOrder entryOrderOf(const PianoRecord*);
Outcome<void> keepEntryOrder(Workbench&, const EntryOrder&);

/// Ids for the settings, in the order of Kind.
const std::vector<QString>& entryOrderIds();
QString entryOrderName(EntryOrder::Kind);
/// With what F4 adds to it: "One dimension, note by note".
QString entryOrderName(const EntryOrder&);

/// The cells in order, those said to be not fitted in this pass left out.
class EntryWalk {
public:
    EntryWalk() = default;
    EntryWalk(const Workbench&, const EntryOrder&, const std::vector<DimensionId>& columns);
    /// The cell after (by = 1) or before (-1); none at the end. A cell off the walk goes to the nearest one on it.
    std::optional<Cell> step(Cell from, int by) const;
    std::optional<Cell> first() const;
    std::size_t size() const { return m_cells.size(); }
    const std::vector<Cell>& cells() const { return m_cells; }

private:
    std::vector<Cell> m_cells;
    std::map<Cell, std::size_t> m_places;
};

/// What is said where a reading is stored and the order leads no further, or leads nowhere at all.
struct OrderEnd {
    QString headline, more;
};
OrderEnd endOf(const EntryOrder&, const EntryWalk&);

/// Notes that are out in the pass before this one, else in this one.
std::vector<NoteNumber> notesOut(const Workbench&);

} // namespace hammerline
