// Which column of a table is what.
#pragma once

#include "core/intake/intake.h"

namespace hammerline {

struct Column {
    std::size_t index{};
    ColumnUse use;
    Unit bare = Unit::mm; // of a bare number
    int trial = 1;        // "dip 2" is the second reading
};

struct Columns {
    std::size_t headRow{};
    std::vector<Column> all;        // in the order of the file
    std::vector<Column> notes;      // number, name or both
    std::vector<Column> dimensions; // blow and let-off first: others are compared with them
};

/// The head is the first of the leading rows that names a note and a dimension; what stands above is a title.
/// Refuses badTable: "note-column", "dimension-column".
Outcome<Columns> findColumns(const Table&, const Piano&, const TableOptions&);

} // namespace hammerline
