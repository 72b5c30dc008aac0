// Copies of a book that are checked before they get their name.
#pragma once

#include "db/files.h"
#include "db/headway.h"

#include <SQLiteCpp/Database.h>

namespace hammerline {

/// Page by page; the source is held in a transaction by whoever calls.
void copyPages(SQLite::Database& from, SQLite::Database& to, const Headway&);

/// Copies page by page into `copy` (not yet placed) and verifies it: integrity, references, the same rows in every
/// table. Fails with damagedBook (the source), cannotWrite, diskFull, cancelled.
void copyVerified(SQLite::Database& source, const std::string& sourcePath, const PassingFile& copy, const Headway&);

} // namespace hammerline
