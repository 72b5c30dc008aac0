// A book is kept to its own files: what a journal beside it names is neither opened nor deleted.
#pragma once

#include <string>

namespace hammerline {

/// The name of a file system of SQLite's like `base` (empty: the system's own) that refuses super-journals, with
/// SQLITE_CANTOPEN. This program never writes one (nothing is ever attached), and SQLite deletes the one that a journal
/// names, whatever file that is (sqlite.org/fileformat2.html, section 3). Throws SQLite::Exception where there is no
/// such base.
std::string ownFilesOver(const std::string& base);

} // namespace hammerline
