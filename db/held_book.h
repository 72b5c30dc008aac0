// While a book is replaced nobody is in the middle of a change of it.
#pragma once

#include "db/headway.h"

#include <string>

namespace hammerline {

/// Holds the bytes on which all programs that use SQLite agree when one of them writes (sqlite.org/lockingv3.html),
/// without touching the book: a journal that was left beside it stays. Waits as long as any writer does, then fails
/// with lockedBook. A file that may not be opened for writing is not held: nobody here writes in it.
/// The lock is of the open file (open file description lock, fcntl(2)): it stays when this program closes other files
/// of its own on the book. Not in the middle of a change of this process's own, whose locks would go with this file.
class HeldBook {
public:
    HeldBook(const std::string& path, const Headway& headway);
    HeldBook(const HeldBook&) = delete;
    HeldBook& operator=(const HeldBook&) = delete;
    ~HeldBook();

private:
    int m_file;
};

} // namespace hammerline
