// What can still be read of a damaged book, row by row (SQLite's own recovery is not part of its library).
#pragma once

#include "db/headway.h"
#include "db/open_book.h"
#include "db/subjects.h"

namespace hammerline {

/// A table to be rescued: its columns, of which the first `key` are the primary key and those of these before
/// `split` are numbers by which a damaged stretch is searched piece by piece.
struct RescueTable {
    std::string name;
    std::vector<TableColumn> columns;
    std::size_t key, split;
    int since = 1; // the schema that brought it
};
/// In an order in which each points at those before it.
const std::vector<RescueTable>& rescueTables();

/// Copies what can be read into a new, empty book whose foreign keys are off; what breaks a rule of the schema is lost.
Rescued copyReadable(SQLite::Database& damaged, SQLite::Database& into, const Headway&);

/// Makes what was copied whole again: rows that point at something lost get a stand-in, or point at nothing.
void mendRescued(OpenBook&);

} // namespace hammerline
