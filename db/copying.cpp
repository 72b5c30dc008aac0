#include "db/copying.h"

#include "db/act_digests.h"
#include "db/connection.h"
#include "db/guard.h"
#include "db/picture_store.h"
#include "db/verification.h"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <sqlite3.h>

namespace hammerline {
namespace {

constexpr int kPagesAtOnce = 128; // half a megabyte: some milliseconds

std::string firstProblem(SQLite::Database& db, const Headway& headway) {
    std::string problem;
    withChecks(db, [&](SQLite::Database& checked) {
        const Watched watched(checked, headway);
        for (const char* check : {"PRAGMA integrity_check(1)", "PRAGMA foreign_key_check"}) {
            SQLite::Statement statement(checked, check);
            const bool found = problem.empty() && statement.executeStep();
            if (found && statement.getColumn(0).getString() != "ok") problem = statement.getColumn(0).getString();
        }
        const bool ofNow = pragmaNumber(checked, "user_version") == kSchemaVersion; // others have no digests, or more
        if (!problem.empty() || !ofNow) return;
        Statements query(checked);
        const auto unproven = ActDigests(checked, query).problems(1);
        if (!unproven.empty()) problem = unproven.front();
        Verification pictures;
        if (problem.empty()) checkPictures(checked, pictures);
        if (!pictures.problems.empty()) problem = pictures.problems.front().what;
    });
    return problem;
}

} // namespace

void copyPages(SQLite::Database& from, SQLite::Database& to, const Headway& headway) {
    SQLite::Backup backup(to, from);
    int step = SQLITE_OK;
    while (step == SQLITE_OK) {
        step = backup.executeStep(kPagesAtOnce);
        headway.at(1.0 - static_cast<double>(backup.getRemainingPageCount()) / std::max(backup.getTotalPageCount(), 1));
    }
    if (step != SQLITE_DONE) throw SQLite::Exception("copy not finished", step);
}

void copyVerified(SQLite::Database& source, const std::string& sourcePath, const PassingFile& copy,
                  const Headway& headway) {
    const SQLite::Transaction held(source); // what is counted is what is copied
    if (const std::string problem = firstProblem(source, headway.part(0, 0.4)); !problem.empty())
        fail(RefusalCode::damagedBook, sourcePath, problem);
    const auto counts = rowCounts(source);
    try {
        SQLite::Database target(copy.path(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, 0, fileSystem());
        takeRights(sourcePath, copy.path());
        copyPages(source, target, headway.part(0.4, 0.6));
    } catch (const SQLite::Exception& thrown) { // of the source, or of the place where the copy was to be
        const int code = thrown.getErrorCode() & 0xff;
        if (code == SQLITE_CORRUPT || code == SQLITE_NOTADB || code == SQLITE_BUSY || code == SQLITE_LOCKED) throw;
        throw Refused{refusalInFlight(copy.target(), Doing::writing)};
    }
    SQLite::Database made = connect(copy.path(), Reach::read);
    if (const std::string problem = firstProblem(made, headway.part(0.6, 1)); !problem.empty())
        fail(RefusalCode::cannotWrite, copy.target(), "copy:" + problem);
    if (rowCounts(made) != counts) fail(RefusalCode::cannotWrite, copy.target(), "copy:row-counts");
}

} // namespace hammerline
