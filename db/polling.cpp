// Whether another program has changed the book or put another file in its place (architecture: every 250 ms).
#include "db/polling.h"

#include "db/open_book.h"

namespace hammerline {

Change pollBook(OpenBook& book) {
    if (book.atWork()) return Change::none;
    const auto file = fileAt(book.path);
    if (!file) return Change::fileGone;
    if (*file != book.file) return Change::fileReplaced;
    try {
        const std::int64_t version = pragmaNumber(book.db, "data_version");
        if (version == book.dataVersion) return Change::none;
        book.dataVersion = version;
        book.forgetDimensions();
        return Change::dataChanged;
    } catch (const SQLite::Exception&) { // busy, or unreadable for a moment: the next poll will tell
        return Change::none;
    }
}

} // namespace hammerline
