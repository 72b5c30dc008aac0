// Files beside a book: written whole under a passing name, then put in place; never half a file under a true name.
#pragma once

#include "core/refusal/refusal.h"
#include "db/guard.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace hammerline {

/// The folder a file lies in; "." for a bare name.
std::filesystem::path folderOf(const std::string& path);

/// Detail of cannotWrite: what was to be written is there, but the disk has not said that it will stay.
inline constexpr const char* kKeptUnsynced = "kept";

/// Deletes its file on leaving unless it was put in place. Until then a byte beyond those that SQLite uses is locked,
/// for the open file alone: whoever finds the file knows whether somebody is still at it (isBeingWritten).
class PassingFile {
public:
    /// A new file beside `path`, hidden and empty. Fails with cannotWrite where the folder is missing or protected.
    explicit PassingFile(const std::string& path, unsigned mode = 0644);
    PassingFile(const PassingFile&) = delete;
    PassingFile& operator=(const PassingFile&) = delete;
    ~PassingFile();
    const std::string& path() const { return m_path; }
    /// What it is to become: the name that a person knows.
    const std::string& target() const { return m_target; }
    /// Under a name that must be free; fails with fileExists or cannotWrite.
    void placeNew(const std::string& path);
    /// A book under a name that must be free: what is left beside that name is set aside first.
    void placeNewBook(const std::string& path);
    /// Over whatever lies there, in one step.
    void placeOver(const std::string& path);

private:
    void letGo();

    std::string m_path, m_target;
    int m_file = -1;
    bool m_placed = false;
};

/// Whether a passing file is held by a program that runs.
bool isBeingWritten(const std::string& path);

/// The file that a name means: whole from the root, links followed, so that a journal is looked for and copies are put
/// where the book truly lies, and that no name is taken for a URI by SQLite. A file that is not there yet: in its true
/// folder. Fails with cannotRead or cannotWrite.
std::string realName(const std::string& path, Doing);

/// Whether something lies there, of whatever kind; what cannot be looked at counts as being there.
bool liesThere(const std::string& path);

/// What another book has left beside a name (-journal, -wal, -shm) would be rolled into the next book of that name:
/// moved to dated names, for good on the disk before this returns. Only for a name at which no book lies.
void setCompanionsAside(const std::string& path);

/// Who may read and write `to` from now on: as `from`, and its owner both. A disk without rights has none to give.
void takeRights(const std::string& from, const std::string& to);

/// A second name for the same file, or where the disk has none a copy of it, for good on the disk.
void keepAlso(const std::string& path, const std::string& as);

/// Refuses cannotRead for a folder ("folder") and for what may give bytes for ever, or none (a pipe, a device:
/// "not-a-file"). What is not there is left to the opening.
Outcome<void> requireFile(const std::string& path);

/// Why a file cannot be read or written, from the system's error number.
Refusal readingRefusal(const std::string& path, int error);
Refusal writingRefusal(const std::string& path, int error);

/// Byte by byte, over whatever lies there.
void copyFile(const std::string& from, const std::string& to);

/// "shop.hammerline", "backup", time -> "shop.backup-20261125-044512.hammerline" beside it; -2, -3 where taken.
std::string datedName(const std::string& path, const std::string& word, std::int64_t microseconds);
/// Files of that book and word, oldest first.
std::vector<std::string> datedFiles(const std::string& path, const std::string& word);

} // namespace hammerline
