#include "db/backup.h"

#include "db/acts.h"
#include "db/copying.h"
#include "db/file_header.h"
#include "db/opening.h"

#include <filesystem>

namespace hammerline {
namespace {

Uuid bookUuid(SQLite::Database& db) {
    Statements query(db);
    Query find = query("SELECT uuid FROM book");
    if (!find.step()) fail(RefusalCode::damagedBook, db.getFilename(), "book-row");
    return find.uuid(0);
}

/// An older backup of the same book may be written over; nothing else may.
void requireOwnBackup(OpenBook& book, const std::string& path) {
    if (fileAt(path) == book.file || !readHeader(path)) fail(RefusalCode::fileExists, path);
    SQLite::Database other = connect(path, Reach::read);
    if (bookUuid(other) != bookUuid(book.db)) fail(RefusalCode::fileExists, path);
}

} // namespace

std::string copyBeside(OpenBook& book, const std::string& word, const Headway& headway) {
    const std::string target = datedName(book.path, word, book.now());
    PassingFile copy(target);
    copyVerified(book.db, book.path, copy, headway);
    copy.placeNew(target);
    return target;
}

/// Only what is one of our books: a name alone is not enough to delete a file.
void rotateCopies(const OpenBook& book, const std::string& word) {
    auto files = datedFiles(book.path, word);
    while (files.size() > kBackupsKept) {
        std::error_code ignored;
        if (readHeader(files.front())) std::filesystem::remove(files.front(), ignored);
        files.erase(files.begin());
    }
}

std::string backUpBook(OpenBook& book, const std::string& path, const Headway& headway) {
    requireAtRest(book);
    if (path.empty()) {
        const std::string made = copyBeside(book, "backup", headway);
        rotateCopies(book, "backup");
        return made;
    }
    const bool over = std::filesystem::exists(path);
    if (over) requireOwnBackup(book, path);
    PassingFile copy(path);
    copyVerified(book.db, book.path, copy, headway);
    if (over)
        copy.placeOver(path);
    else
        copy.placeNew(path);
    return path;
}

/// The present file, whatever state it is in, is kept under a dated name; its journal goes with it.
Outcome<std::string> restoreBook(const std::string& path, const std::string& from, const GoOn& goOn) {
    return guarded(path, Doing::writing, [&] {
        const Headway headway(goOn);
        const auto source =
            guarded(from, Doing::reading, [&] { return openBook(from, OpenMode::readOnly, {}, headway.part(0, 0.2)); });
        if (!source) throw Refused{source.error()};
        PassingFile copy(path);
        copyVerified((*source)->db, from, copy, headway.part(0.2, 1));
        std::string kept;
        if (std::filesystem::exists(path)) {
            if (fileAt(path) == (*source)->file) fail(RefusalCode::fileExists, from);
            kept = datedName(path, "replaced", (*source)->now());
            moveBook(path, kept);
        }
        try {
            copy.placeNew(path);
        } catch (...) { // the old book back to its place
            if (!kept.empty()) moveBook(kept, path);
            throw;
        }
        return kept;
    });
}

} // namespace hammerline
