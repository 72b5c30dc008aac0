// A pass laid out by dimension and note, read once from its cells: what evenness, relation and ranking look through.
#pragma once

#include "core/pass/pass.h"

namespace hammerline {

class PassTable {
public:
    PassTable(const Piano&, const Pass&);

    int notes() const { return m_notes; }
    /// Null where the cell holds nothing, or lies outside the compass or catalogue.
    const Measured* at(Cell) const;
    /// The plain number of the cell in the dimension's trade unit; none for words, inequalities and cells said to be
    /// not fitted.
    std::optional<double> value(Cell) const;
    std::optional<std::int64_t> count(Cell) const;
    std::optional<WordId> word(Cell) const;
    /// Trials that are plain numbers.
    int repeats(Cell) const;

private:
    std::size_t place(Cell) const; // npos where outside
    int m_notes;
    std::vector<const Measured*> m_cells; // [dimension * notes + note - 1]
    std::vector<std::optional<std::int64_t>> m_counts;
};

} // namespace hammerline
