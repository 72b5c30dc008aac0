#include "db/verification.h"

#include "db/act_digests.h"
#include "db/connection.h"
#include "db/copying.h"
#include "db/picture_store.h"
#include "db/schema_shape.h"

#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>
#include <unistd.h>

#include <array>
#include <utility>

namespace hammerline {
namespace {

constexpr std::size_t kMostProblems = 100;

void gather(SQLite::Database& db, const std::string& sql, const std::string& what, Verification& into) {
    SQLite::Statement check(db, sql);
    while (check.executeStep() && into.problems.size() < kMostProblems) {
        const std::string found = check.getColumn(0).getString();
        if (found != "ok") into.problems.push_back({what + ":" + found});
    }
}

/// What no CHECK can say, as rows that ought not to be there.
constexpr std::array kUnsound = {
    std::pair{"act", "SELECT a.id FROM act a JOIN act u ON u.id = a.undoes WHERE u.place >= a.place"},
    std::pair{"act-order", "SELECT b.id FROM act a JOIN act b ON b.session_id = a.session_id AND b.seq = a.seq + 1 "
                           "WHERE b.place <= a.place"},
    std::pair{"book-row", "SELECT 'missing' WHERE (SELECT count(*) FROM book) <> 1"},
    std::pair{"piano", "SELECT id FROM piano WHERE NOT EXISTS (SELECT 1 FROM setup WHERE piano_id = piano.id)"},
    std::pair{"pass", "SELECT id FROM pass WHERE NOT EXISTS (SELECT 1 FROM pass_version WHERE pass_id = pass.id)"},
    // beyond it no act could be written any more; see nextPlace
    std::pair{"act-place", "SELECT id FROM act WHERE place < 0 OR place > 1 << 61"},
    std::pair{"done", "SELECT said_in FROM done WHERE said_in > act_id"},
    std::pair{"picture", "SELECT hash FROM photo WHERE hash NOT IN (SELECT hash FROM picture)"},
    std::pair{"remark", "SELECT said_in FROM remark WHERE said_in > act_id"},
};

} // namespace

void withChecks(SQLite::Database& db, const std::function<void(SQLite::Database&)>& work) {
    const auto onlyReads = [](SQLite::Database& which) { return sqlite3_db_readonly(which.getHandle(), "main") == 1; };
    if (!onlyReads(db)) return work(db);
    if (access(db.getFilename().c_str(), W_OK) == 0) {
        SQLite::Database writable = connect(db.getFilename(), Reach::write);
        writable.exec("PRAGMA query_only=ON");
        if (!onlyReads(writable)) return work(writable);
    }
    SQLite::Database memory = connectInMemory();
    copyPages(db, memory, Headway());
    work(memory);
}

std::string quickProblem(SQLite::Database& db) {
    std::string problem = "quick-check";
    withChecks(db, [&](SQLite::Database& checked) {
        SQLite::Statement check(checked, "PRAGMA quick_check(1)");
        if (check.executeStep()) problem = check.getColumn(0).getString();
    });
    return problem == "ok" ? std::string() : problem;
}

namespace {

void verifyOn(SQLite::Database& db, int version, Verification& result) {
    gather(db, "PRAGMA integrity_check(100)", "integrity", result);
    gather(db, "PRAGMA foreign_key_check", "foreign-key", result);
    if (const std::string foreign = foreignIn(db, version); !foreign.empty())
        result.problems.push_back({"schema:" + foreign});
    if (result.problems.empty())
        for (const auto& [what, sql] : kUnsound)
            gather(db, sql, what, result);
    if (result.problems.empty()) {
        Statements query(db);
        for (std::string& problem : ActDigests(db, query).problems(kMostProblems))
            result.problems.push_back({std::move(problem)});
        if (Query older = query("SELECT older_at FROM seal WHERE older > 0"); older.step())
            result.olderAt = older.number(0);
        if (result.problems.empty()) checkPictures(db, result);
    }
    result.sound = result.problems.empty();
}

} // namespace

Verification verifyAll(SQLite::Database& db, int version, const Headway& headway) {
    Verification result;
    withChecks(db, [&](SQLite::Database& checked) {
        const Watched watched(checked, headway);
        verifyOn(checked, version, result);
    });
    return result;
}

std::map<std::string, std::int64_t> rowCounts(SQLite::Database& db) {
    std::map<std::string, std::int64_t> counts;
    for (const auto& [name, shape] : shapeOf(db))
        if (shape.starts_with("table\n"))
            counts[name] = db.execAndGet("SELECT count(*) FROM \"" + name + "\"").getInt64();
    return counts;
}

} // namespace hammerline
