#include "db/backup.h"

#include "db/acts.h"
#include "db/copying.h"
#include "db/file_header.h"
#include "db/held_book.h"
#include "db/opening.h"

#include <algorithm>
#include <filesystem>

namespace hammerline {
namespace {

Uuid bookUuid(SQLite::Database& db) {
    Statements query(db);
    Query find = query("SELECT uuid FROM book");
    if (!find.step()) fail(RefusalCode::damagedBook, db.getFilename(), "book-row");
    return find.uuid(0);
}

/// An older backup of the same book may be written over; nothing else may. One with a journal beside it has been
/// written in since: that journal would be rolled into what takes its place.
void requireOwnBackup(OpenBook& book, const std::string& path) {
    if (fileAt(path) == book.file || !readHeader(path)) fail(RefusalCode::fileExists, path);
    for (const char* companion : {"-journal", "-wal"})
        if (liesThere(path + companion)) fail(RefusalCode::cannotWrite, path, "journal-beside");
    SQLite::Database other = connect(path, Reach::read);
    if (bookUuid(other) != bookUuid(book.db)) fail(RefusalCode::fileExists, path);
}

} // namespace

std::string copyBeside(OpenBook& book, const std::string& word, const Headway& headway) {
    const std::string target = datedName(book.path, word, book.now());
    PassingFile copy(target);
    copyVerified(book.db, book.path, copy, headway);
    copy.placeNewBook(target);
    return target;
}

namespace {

/// What a copy knows: the place of its newest act, which only grows, and how many there are; none where it cannot be
/// read. A date in a name is a clock's, and a clock may have gone back.
using Knows = std::pair<std::int64_t, std::int64_t>;
std::optional<Knows> knownBy(const std::string& copy) {
    if (!readHeader(copy)) return std::nullopt;
    const auto known = guarded(copy, Doing::reading, [&] {
        SQLite::Database db = connect(copy, Reach::read);
        SQLite::Statement find(db, "SELECT coalesce(max(place), 0), count(*) FROM act");
        find.executeStep();
        return Knows{find.getColumn(0).getInt64(), find.getColumn(1).getInt64()};
    });
    return known ? std::optional(*known) : std::nullopt;
}

} // namespace

/// Only what is one of our books: a name alone is not enough to delete a file.
void rotateCopies(const OpenBook& book, const std::string& word, const std::string& made) {
    const auto files = datedFiles(book.path, word);
    std::vector<std::pair<Knows, std::string>> others;
    for (const std::string& file : files)
        if (const auto known = file == made ? std::nullopt : knownBy(file)) others.emplace_back(*known, file);
    std::sort(others.begin(), others.end());
    const std::size_t tooMany = others.size() + 1 > kBackupsKept ? others.size() + 1 - kBackupsKept : 0;
    others.resize(std::min(tooMany, others.size()));
    for (const auto& [known, file] : others) {
        std::error_code ignored;
        std::filesystem::remove(file, ignored);
    }
}

std::string backUpBook(OpenBook& book, const std::string& named, const Headway& headway) {
    requireAtRest(book);
    if (named.empty()) {
        std::string made = copyBeside(book, "backup", headway);
        rotateCopies(book, "backup", made);
        return made;
    }
    const std::string path = realName(named, Doing::writing);
    const bool over = liesThere(path);
    if (over) requireOwnBackup(book, path);
    PassingFile copy(path);
    copyVerified(book.db, book.path, copy, headway);
    if (over)
        copy.placeOver(path);
    else
        copy.placeNewBook(path);
    return path;
}

namespace {

/// Under a dated name as well, its journal with it. At no moment is there no book: the new one takes the name in one
/// step, over the old.
std::string keepReplaced(const std::string& path, std::int64_t now) {
    std::string kept = datedName(path, "replaced", now);
    if (liesThere(path + "-journal")) keepAlso(path + "-journal", kept + "-journal");
    keepAlso(path, kept);
    return kept;
}

void forgetKept(const std::string& kept) {
    std::error_code ignored;
    std::filesystem::remove(kept, ignored);
    std::filesystem::remove(kept + "-journal", ignored);
}

} // namespace

/// The present file, whatever state it is in, is kept under a dated name; its journal goes with it.
Outcome<std::string> restoreBook(const std::string& named, const std::string& from, const GoOn& goOn) {
    return guarded(named, Doing::writing, [&] {
        const std::string path = realName(named, Doing::writing);
        const Headway headway(goOn);
        const auto source =
            guarded(from, Doing::reading, [&] { return openBook(from, OpenMode::readOnly, {}, headway.part(0, 0.2)); });
        if (!source) throw Refused{source.error()};
        PassingFile copy(path);
        copyVerified((*source)->db, from, copy, headway.part(0.2, 1));
        if (!liesThere(path)) {
            copy.placeNewBook(path);
            return std::string();
        }
        if (fileAt(path) == (*source)->file) fail(RefusalCode::fileExists, from);
        const HeldBook held(path, headway);
        std::string kept = keepReplaced(path, (*source)->now());
        const auto before = fileAt(path);
        try {
            setCompanionsAside(path); // the pair is kept; a journal left here would be rolled into the restored book
            copy.placeOver(path);
        } catch (...) {
            if (fileAt(path) != before) fail(RefusalCode::cannotWrite, path, "placed:" + kept);
            const bool left = liesThere(kept + "-journal"), there = liesThere(path + "-journal");
            if (left && !there) keepAlso(kept + "-journal", path + "-journal"); // the book is as it was
            forgetKept(kept);
            throw;
        }
        return kept;
    });
}

} // namespace hammerline
