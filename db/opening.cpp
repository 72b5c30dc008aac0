#include "db/opening.h"

#include "db/copying.h"
#include "db/file_header.h"
#include "db/files.h"
#include "db/migration.h"
#include "db/schema_shape.h"
#include "db/verification.h"

#include <unistd.h>

#include <filesystem>

namespace hammerline {
namespace {

// Bytes, some six hundred pianos: a fifth of a second of checking, which a start can bear so that nothing is written
// into a damaged book; larger books are checked by verify and backUp.
constexpr std::uint64_t kCheckedOnOpening = 16 * 1024 * 1024;

void enterBook(SQLite::Database& db, const Writer& writer, std::int64_t now) {
    SQLite::Transaction transaction(db, SQLite::TransactionBehavior::IMMEDIATE);
    Statements query(db);
    Query insert = query("INSERT INTO book (id, uuid, made_at, made_by, oldest_reader) VALUES (1, ?, ?, ?, 1)");
    insert << newUuid() << now << writer.program;
    insert.run();
    ActDigests(db, query).seal();
    transaction.commit();
}

std::int64_t timeOf(const Writer& writer) {
    return writer.now ? writer.now() : OpenBook::clock();
}

/// Why a book cannot be written although it was asked for; empty: it can.
std::string_view whyReadOnly(const std::string& path, OpenMode mode) {
    if (mode == OpenMode::readOnly) return "opened-read-only";
    if (access(path.c_str(), W_OK) != 0) return "file";
    if (access(folderOf(path).c_str(), W_OK | X_OK) != 0) return "folder"; // no journal can be made there
    return {};
}

/// A process that was killed leaves a journal; a reader alone may not roll it back.
void recover(const std::string& path) {
    try {
        SQLite::Database db = connect(path, Reach::write);
        db.execAndGet("SELECT count(*) FROM sqlite_schema");
    } catch (const SQLite::Exception&) { // then the reader says what is wrong
    } catch (const Refused&) {
    }
}

void requireOurs(OpenBook& book, const FileHeader& header) {
    if (const std::string active = activeIn(book.db); !active.empty())
        fail(RefusalCode::notABook, book.path, "foreign:" + active);
    if (book.newer) {
        const auto reader = book.db.execAndGet("SELECT oldest_reader FROM book").getInt();
        if (reader > kSchemaVersion) fail(RefusalCode::newerBook, book.path, std::to_string(header.userVersion));
        return;
    }
    if (const std::string foreign = foreignIn(book.db, kSchemaVersion); !foreign.empty())
        fail(RefusalCode::notABook, book.path, "foreign:" + foreign);
    if (header.bytes > kCheckedOnOpening) return;
    if (const std::string problem = quickProblem(book.db); !problem.empty())
        fail(RefusalCode::damagedBook, book.path, problem);
}

/// An older book that is only read stays as it is: it is brought up to date in memory.
std::unique_ptr<OpenBook> readOlder(const std::string& path, int version, Writer writer, const Headway& headway) {
    SQLite::Database memory = connectInMemory();
    {
        SQLite::Database db = connect(path, Reach::read);
        if (const std::string foreign = foreignIn(db, version); !foreign.empty())
            fail(RefusalCode::notABook, path, "foreign:" + foreign);
        const SQLite::Transaction held(db);
        copyPages(db, memory, headway.part(0, 0.5));
    }
    runSteps(memory, schemaSteps(), headway.part(0.5, 1));
    return std::make_unique<OpenBook>(path, std::move(memory), std::move(writer));
}

std::unique_ptr<OpenBook> openNewer(const std::string& path, const FileHeader& header, Writer writer) {
    try {
        auto book = std::make_unique<OpenBook>(path, Reach::read, true, std::move(writer));
        requireOurs(*book, header);
        return book;
    } catch (const SQLite::Exception&) {
        const Refusal refusal = refusalInFlight(path, Doing::reading);
        const bool journal =
            refusal.detail == "hot-journal" || (header.journalBeside && refusal.code != RefusalCode::lockedBook);
        fail(RefusalCode::newerBook, path, journal ? "hot-journal" : std::to_string(header.userVersion));
    }
}

} // namespace

std::unique_ptr<OpenBook> createBook(const std::string& named, Writer writer,
                                     const std::function<void(std::unique_ptr<OpenBook>)>& fill) {
    const std::string path = realName(named, Doing::writing);
    if (liesThere(path)) fail(RefusalCode::fileExists, path);
    PassingFile made(path);
    {
        SQLite::Database db = connect(made.path(), Reach::create);
        runSteps(db, schemaSteps());
        enterBook(db, writer, timeOf(writer));
    }
    try {
        if (fill) fill(std::make_unique<OpenBook>(made.path(), Reach::write, false, writer));
    } catch (Refused& refused) { // a person knows it by its own name, and nothing is kept under that
        const bool ofBook = refused.refusal.offending == made.path();
        if (ofBook) refused.refusal.offending = path;
        if (ofBook && refused.refusal.code == RefusalCode::cannotWrite) refused.refusal.detail = "input-output";
        throw;
    }
    made.placeNewBook(path);
    try {
        return std::make_unique<OpenBook>(path, Reach::write, false, std::move(writer));
    } catch (...) { // it is there, and nothing else may be said of it
        fail(RefusalCode::cannotWrite, path, kKeptUnsynced);
    }
}

namespace {

/// A verified copy of an older book. Empty: another window has brought the book up to date meanwhile.
std::string copyOfOlder(SQLite::Database& db, const std::string& path, int version, std::int64_t now,
                        const Headway& headway) {
    const auto olderStill = [&] { return pragmaNumber(db, "user_version") == version; };
    const std::string foreign = foreignIn(db, version);
    if (!olderStill()) return {};
    if (!foreign.empty()) fail(RefusalCode::notABook, path, "foreign:" + foreign);
    PassingFile copy(path);
    copyVerified(db, path, copy, headway);
    if (!olderStill()) return {}; // and the copy may be of either
    for (;;) {
        std::string kept = datedName(path, "schema-" + std::to_string(version), now);
        try {
            copy.placeNewBook(kept);
            return kept;
        } catch (const Refused& refused) { // another window has made its copy in the same second
            if (refused.refusal.code != RefusalCode::fileExists) throw;
        }
    }
}

void forgetCopy(const std::string& kept) {
    std::error_code ignored;
    std::filesystem::remove(kept, ignored);
}

} // namespace

std::string migrateBook(const std::string& path, int version, std::span<const SchemaStep> steps, std::int64_t now,
                        const Headway& headway) {
    if (steps.empty() || version >= steps.back().version) return {};
    SQLite::Database db = connect(path, Reach::write);
    const std::string kept = copyOfOlder(db, path, version, now, headway.part(0, 0.8));
    if (kept.empty()) return {};
    try {
        if (runSteps(db, steps, headway.part(0.8, 1))) return kept;
    } catch (...) {
        // a book that is as before needs no copy, and every opening would leave one more
        if (pragmaNumber(db, "user_version") == version) forgetCopy(kept);
        throw;
    }
    forgetCopy(kept); // another window was faster, and has a copy of its own
    return {};
}

std::unique_ptr<OpenBook> openBook(const std::string& named, OpenMode mode, Writer writer, const Headway& headway) {
    const std::string path = realName(named, Doing::reading);
    FileHeader header = orFail(readHeader(path));
    const auto newer = [&] { return header.userVersion > static_cast<std::uint32_t>(kSchemaVersion); };
    const std::string_view why = whyReadOnly(path, mode);
    const bool writable = why.empty() || why == "opened-read-only";
    if (header.journalBeside && writable && !newer()) {
        recover(path);
        header = orFail(readHeader(path)); // a schema step that was broken off may have been rolled back
    }
    if (newer()) return openNewer(path, header, std::move(writer));
    const int version = static_cast<int>(header.userVersion);
    const bool older = version < kSchemaVersion;
    if (older && mode == OpenMode::readWrite) {
        if (!writable) fail(RefusalCode::readOnlyBook, path, "older:" + std::string(why));
        migrateBook(path, version, schemaSteps(), timeOf(writer), headway);
    }
    auto book =
        older && mode == OpenMode::readOnly
            ? readOlder(path, version, std::move(writer), headway)
            : std::make_unique<OpenBook>(path, why.empty() ? Reach::write : Reach::read, false, std::move(writer));
    book->whyReadOnly = why;
    requireOurs(*book, header);
    return book;
}

} // namespace hammerline
