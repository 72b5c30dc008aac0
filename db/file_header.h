// The first hundred bytes of a book, read by hand before SQLite sees the file: what is not ours is never opened.
#pragma once

#include "core/refusal/refusal.h"

#include <cstdint>

namespace hammerline {

inline constexpr std::size_t kHeaderBytes = 100;
inline constexpr std::uint32_t kApplicationId = 0x484C424B; // "HLBK"

struct FileHeader {
    std::uint32_t userVersion{};
    std::uint64_t bytes{};
    bool writeAheadLog = false; // another program has switched the journal
    bool journalBeside = false; // a journal that may have to be rolled back first
};

/// Whether the rollback journal of a book names a further file, as that of a change to several files at once does
/// (sqlite.org/atomiccommit.html, section 5). No program of ours makes such a change, and SQLite would open the file
/// that is named, and delete it.
bool journalNamesAFile(const std::string& book);

/// The file format of SQLite, section 1.3 (sqlite.org/fileformat2.html). Refuses cannotRead (missing, a folder, no
/// permission), notABook (empty, another kind of file, another application, a journal that names a further file),
/// damagedBook (shorter than it says).
Outcome<FileHeader> readHeader(const std::string& path);

} // namespace hammerline
