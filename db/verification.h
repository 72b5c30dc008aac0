// Whether a book is whole: structure, references, shape, and what its rows say.
#pragma once

#include "db/bench_book.h"
#include "db/headway.h"

#include <SQLiteCpp/Database.h>

#include <functional>

namespace hammerline {

/// Runs `work(database)` on a connection on which SQLite looks at every CHECK: one that was opened to read knows none
/// of them. Such a book is looked at through another that may write and is kept from it, or, where the file cannot be
/// written, through a copy in memory.
void withChecks(SQLite::Database& db, const std::function<void(SQLite::Database&)>& work);

/// Structure and CHECKs only, fast; empty: sound.
std::string quickProblem(SQLite::Database&);
/// Everything: PRAGMA integrity_check, foreign_key_check, the shape of the schema, chains of acts.
Verification verifyAll(SQLite::Database&, int version, const Headway& = Headway());
/// Rows of every table, by name: a copy must have the same.
std::map<std::string, std::int64_t> rowCounts(SQLite::Database&);

} // namespace hammerline
