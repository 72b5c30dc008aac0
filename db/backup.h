// Backups, restoring, and what can be rescued.
#pragma once

#include "db/open_book.h"

namespace hammerline {

inline constexpr std::size_t kBackupsKept = 10;

/// Empty path: beside the book, dated, the oldest beyond kBackupsKept removed. Gives the path.
std::string backUpBook(OpenBook&, const std::string& path);
/// A verified copy beside the book under `word` and the date, rotated among its like. Gives the path.
std::string backUpBeside(OpenBook&, const std::string& word);

} // namespace hammerline
