// A guarded connection: every safeguard of SQLite on, and read back. Everything that opens a book opens it here.
#pragma once

#include <SQLiteCpp/Database.h>

#include <string>

namespace hammerline {

enum class Reach : std::uint8_t { read, write, create };

/// Rollback journal that is deleted, synchronous EXTRA, foreign keys, no trust in the schema, no triggers, no views, no
/// extensions, cells checked. Throws; a pragma that does not hold fails with damagedBook or lockedBook.
SQLite::Database connect(const std::string& path, Reach);
/// The same of an empty book that is in no file.
SQLite::Database connectInMemory();

/// The file system for books in this process: the system's own, kept to the files of a book (db/own_files.h). Tests put
/// one that fails underneath; empty: the system's.
std::string fileSystem();
void useFileSystem(std::string name);

std::int64_t pragmaNumber(SQLite::Database&, const std::string& name);

} // namespace hammerline
