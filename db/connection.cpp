#include "db/connection.h"

#include "db/guard.h"
#include "db/own_files.h"

#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>

#include <array>

namespace hammerline {
namespace {

constexpr int kBusyMilliseconds = 10'000;
constexpr int kLongestValue = 64 * 1024 * 1024; // bytes of one text: far above any frozen plan

std::string& chosenFileSystem() {
    static std::string name;
    return name;
}

int flags(Reach reach) {
    const int base = SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE;
    if (reach == Reach::read) return base | SQLITE_OPEN_READONLY;
    return base | SQLITE_OPEN_READWRITE | (reach == Reach::create ? SQLITE_OPEN_CREATE : 0);
}

void harden(sqlite3* handle) {
    constexpr std::array on = {SQLITE_DBCONFIG_DEFENSIVE};
    constexpr std::array off = {SQLITE_DBCONFIG_TRUSTED_SCHEMA, SQLITE_DBCONFIG_ENABLE_TRIGGER,
                                SQLITE_DBCONFIG_ENABLE_VIEW,    SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION,
                                SQLITE_DBCONFIG_DQS_DML,        SQLITE_DBCONFIG_DQS_DDL};
    for (const int option : on)
        sqlite3_db_config(handle, option, 1, nullptr);
    for (const int option : off)
        sqlite3_db_config(handle, option, 0, nullptr);
    sqlite3_limit(handle, SQLITE_LIMIT_ATTACHED, 0);
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, kLongestValue);
}

void hold(SQLite::Database& db, const std::string& name, std::int64_t value) {
    db.exec("PRAGMA " + name + "=" + std::to_string(value));
    if (pragmaNumber(db, name) != value) fail(RefusalCode::damagedBook, {}, "pragma:" + name);
}

void safeguard(SQLite::Database& db) {
    harden(db.getHandle());
    hold(db, "cell_size_check", 1);
    hold(db, "trusted_schema", 0);
    hold(db, "foreign_keys", 1);
    hold(db, "temp_store", 2); // memory: nothing is written outside the book and its journal
}

/// A journal that outlives its transaction is not to be left on a stick or a share (a write-ahead log even less).
void holdRollbackJournal(SQLite::Database& db, Reach reach) {
    const std::string command = reach == Reach::read ? "PRAGMA journal_mode" : "PRAGMA journal_mode=DELETE";
    const std::string mode = db.execAndGet(command).getString();
    if (reach != Reach::read && mode != "delete") fail(RefusalCode::lockedBook, db.getFilename(), "journal:" + mode);
}

} // namespace

std::string fileSystem() {
    return ownFilesOver(chosenFileSystem());
}
void useFileSystem(std::string name) {
    chosenFileSystem() = std::move(name);
}

std::int64_t pragmaNumber(SQLite::Database& db, const std::string& name) {
    SQLite::Statement statement(db, "PRAGMA " + name);
    return statement.executeStep() ? statement.getColumn(0).getInt64() : -1;
}

SQLite::Database connect(const std::string& path, Reach reach) {
    SQLite::Database db(path, flags(reach), kBusyMilliseconds, fileSystem());
    safeguard(db);
    hold(db, "mmap_size", 0);
    holdRollbackJournal(db, reach);
    hold(db, "synchronous", 3); // EXTRA: with a deleted journal FULL may lose the last commit in a power cut
    return db;
}

SQLite::Database connectInMemory() {
    SQLite::Database db(":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE);
    safeguard(db);
    return db;
}

} // namespace hammerline
