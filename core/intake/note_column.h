// The column, or the two, that say which note a row is about.
#pragma once

#include "core/intake/columns.h"

namespace hammerline {

class NoteColumn {
public:
    NoteColumn(const Table&, const Columns&, const Piano&);

    /// Refuses unknownNote: no note, none of this piano, or number and name that disagree.
    Outcome<NoteNumber> read(const std::vector<std::string>& fields) const;

private:
    std::string asNamed(std::string_view text) const;

    const Piano& m_piano;
    const std::vector<Column>& m_columns;
    bool m_hForB = false; // the column writes H for B natural, so that its B is B flat
};

} // namespace hammerline
