#include "db/open_book.h"

#include <sqlite3.h>
#include <sys/stat.h>

#include <chrono>

namespace hammerline {

std::optional<FileName> fileAt(const std::string& path) {
    struct stat found {};
    if (stat(path.c_str(), &found) != 0) return std::nullopt;
    return FileName{found.st_dev, found.st_ino};
}

OpenBook::OpenBook(std::string where, Reach reach, bool isNewer, Writer who)
    : OpenBook(where, reach == Reach::read, isNewer, connect(where, reach), std::move(who)) {}

OpenBook::OpenBook(std::string where, SQLite::Database copy, Writer who)
    : OpenBook(std::move(where), true, false, std::move(copy), std::move(who)) {}

OpenBook::OpenBook(std::string where, bool isReadOnly, bool isNewer, SQLite::Database connection, Writer who)
    : path(std::move(where))
    , readOnly(isReadOnly)
    , newer(isNewer)
    , writer(std::move(who))
    , db(std::move(connection))
    , query(db)
    , digests(db, query)
    , file(fileAt(path).value_or(FileName{}))
    , session{newUuid()}
    , dataVersion(pragmaNumber(db, "data_version")) {}

std::int64_t OpenBook::clock() {
    using namespace std::chrono;
    return duration_cast<microseconds>(system_clock::now().time_since_epoch()).count();
}

bool OpenBook::atWork() const {
    return sqlite3_get_autocommit(db.getHandle()) == 0;
}

std::int64_t OpenBook::now() const {
    return writer.now ? writer.now() : clock();
}

std::optional<std::int64_t> OpenBook::knownDimensionRow(DimensionId dimension) {
    if (const auto known = m_rows.find(dimension); known != m_rows.end()) return known->second;
    Query find = query("SELECT id FROM dimension WHERE key = ?");
    find << key(dimension);
    if (!find.step()) return std::nullopt;
    return m_rows[dimension] = find.number(0);
}

std::int64_t OpenBook::dimensionRow(DimensionId dimension) {
    if (const auto known = knownDimensionRow(dimension)) return *known;
    Query insert = query("INSERT INTO dimension (key) VALUES (?)");
    insert << key(dimension);
    insert.run();
    return m_rows[dimension] = db.getLastInsertRowid();
}

std::optional<DimensionId> OpenBook::dimensionOf(std::int64_t rowId) {
    if (const auto known = m_dimensions.find(rowId); known != m_dimensions.end()) return known->second;
    Query find = query("SELECT key FROM dimension WHERE id = ?");
    find << rowId;
    std::optional<DimensionId> dimension;
    if (find.step())
        if (const auto found = findDimension(find.text(0))) dimension = *found;
    return m_dimensions[rowId] = dimension;
}

void OpenBook::forgetDimensions() {
    m_rows.clear();
    m_dimensions.clear();
}

} // namespace hammerline
