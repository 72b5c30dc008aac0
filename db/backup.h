// Backups, restoring, and what can be rescued.
#pragma once

#include "db/headway.h"
#include "db/open_book.h"

namespace hammerline {

inline constexpr std::size_t kBackupsKept = 10;

/// Empty path: beside the book, dated, the oldest beyond kBackupsKept removed. Gives the path.
std::string backUpBook(OpenBook&, const std::string& path, const Headway&);
/// A verified copy beside the book under `word` and the date. Gives the path.
std::string copyBeside(OpenBook&, const std::string& word, const Headway&);
/// Of the copies beside the book under that word those go, beyond kBackupsKept, that know least; never the one just
/// made.
void rotateCopies(const OpenBook&, const std::string& word, const std::string& made);

} // namespace hammerline
