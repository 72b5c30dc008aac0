#include "db/copying.h"

#include "db/connection.h"
#include "db/guard.h"
#include "db/verification.h"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <sqlite3.h>

namespace hammerline {
namespace {

std::string firstProblem(SQLite::Database& db) {
    for (const char* check : {"PRAGMA integrity_check(1)", "PRAGMA foreign_key_check"}) {
        SQLite::Statement statement(db, check);
        if (statement.executeStep() && statement.getColumn(0).getString() != "ok")
            return statement.getColumn(0).getString();
    }
    return {};
}

} // namespace

void copyVerified(SQLite::Database& source, const std::string& sourcePath, const PassingFile& copy) {
    const SQLite::Transaction held(source); // what is counted is what is copied
    if (const std::string problem = firstProblem(source); !problem.empty())
        fail(RefusalCode::damagedBook, sourcePath, problem);
    const auto counts = rowCounts(source);
    try {
        SQLite::Database target(copy.path(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, 0, fileSystem());
        SQLite::Backup backup(target, source);
        if (const int step = backup.executeStep(-1); step != SQLITE_DONE)
            throw SQLite::Exception("copy not finished", step);
    } catch (const SQLite::Exception& thrown) { // of the source, or of the place where the copy was to be
        const int code = thrown.getErrorCode() & 0xff;
        if (code == SQLITE_CORRUPT || code == SQLITE_NOTADB || code == SQLITE_BUSY || code == SQLITE_LOCKED) throw;
        throw Refused{refusalInFlight(copy.target(), Doing::writing)};
    }
    SQLite::Database made = connect(copy.path(), Reach::read);
    if (const std::string problem = firstProblem(made); !problem.empty())
        fail(RefusalCode::cannotWrite, copy.target(), "copy:" + problem);
    if (rowCounts(made) != counts) fail(RefusalCode::cannotWrite, copy.target(), "copy:row-counts");
}

} // namespace hammerline
