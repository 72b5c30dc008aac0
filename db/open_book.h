// An open bench book as the files of this folder share it: connection, statements, who writes.
#pragma once

#include "db/act_digests.h"
#include "db/bench_book.h"
#include "db/connection.h"
#include "db/guard.h"
#include "db/statements.h"

namespace hammerline {

inline constexpr int kSchemaVersion = 5;

/// Which file lies at a path: another one under the same name has another inode.
struct FileName {
    std::uint64_t device{}, inode{};
    friend bool operator==(const FileName&, const FileName&) = default;
};
std::optional<FileName> fileAt(const std::string& path);

/// The session of this process in the book; its row is written with the first act.
struct WritingSession {
    Uuid uuid{};
    std::int64_t id = 0; // 0: not yet in the book
    std::int64_t seq = 0;
};

struct OpenBook {
    OpenBook(std::string path, Reach, bool newer, Writer);
    /// What lies at `path`, read into another place.
    OpenBook(std::string path, SQLite::Database copy, Writer);

    std::string path;
    bool readOnly;
    std::string whyReadOnly; // opened-read-only, file, folder
    bool newer;
    Writer writer;
    SQLite::Database db;
    Statements query;
    ActDigests digests;
    FileName file;
    WritingSession session;
    std::int64_t dataVersion = 0;

    /// In the middle of a transaction: long work lets time pass, and whoever comes by then has to wait.
    bool atWork() const;
    std::int64_t now() const;
    static std::int64_t clock(); // of the system, microseconds since 1970 UTC
    /// Dictionary of dimensions: the row, written on first use; the row if there is one; the dimension of a row, empty
    /// for one that this program does not know.
    std::int64_t dimensionRow(DimensionId);
    std::optional<std::int64_t> knownDimensionRow(DimensionId);
    std::optional<DimensionId> dimensionOf(std::int64_t row);
    void forgetDimensions();

private:
    OpenBook(std::string path, bool readOnly, bool newer, SQLite::Database, Writer);

    std::map<DimensionId, std::int64_t> m_rows;
    std::map<std::int64_t, std::optional<DimensionId>> m_dimensions;
};

} // namespace hammerline
