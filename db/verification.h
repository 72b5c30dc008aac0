// Whether a book is whole: structure, references, shape, and what its rows say.
#pragma once

#include "db/bench_book.h"

#include <SQLiteCpp/Database.h>

namespace hammerline {

/// Structure only, fast; empty: sound.
std::string quickProblem(SQLite::Database&);
/// Everything: PRAGMA integrity_check, foreign_key_check, the shape of the schema, chains of acts.
Verification verifyAll(SQLite::Database&, int version);
/// Rows of every table, by name: a copy must have the same.
std::map<std::string, std::int64_t> rowCounts(SQLite::Database&);

} // namespace hammerline
