#include "db/migration.h"

#include "db/connection.h"
#include "db/file_header.h"
#include "db/guard.h"
#include "db/open_book.h"

#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>

#include <string>

namespace hammerline {
namespace {

void requireNoOrphans(SQLite::Database& db, const Headway& headway) {
    const Watched watched(db, headway);
    SQLite::Statement check(db, "PRAGMA foreign_key_check");
    if (check.executeStep()) fail(RefusalCode::damagedBook, {}, "foreign-key:" + check.getColumn(0).getString());
}

constexpr int kFirstWithDigests = 3;

/// Acts from before there were digests get theirs. A book that is just made has no row yet: it is sealed with it.
void giveDigests(SQLite::Database& db) {
    Statements query(db);
    if (query("SELECT 1 FROM book").step()) ActDigests(db, query).sealOlder(OpenBook::clock());
}

/// Foreign keys stay off while tables are rebuilt (else a rebuilt parent takes its children along), and the check
/// before the commit makes up for it. Off and on work outside a transaction only.
class ForeignKeysOff {
public:
    explicit ForeignKeysOff(SQLite::Database& db) : m_db(db) { m_db.exec("PRAGMA foreign_keys=OFF"); }
    ForeignKeysOff(const ForeignKeysOff&) = delete;
    ForeignKeysOff& operator=(const ForeignKeysOff&) = delete;
    ~ForeignKeysOff() { m_db.tryExec("PRAGMA foreign_keys=ON"); }

private:
    SQLite::Database& m_db;
};

} // namespace

bool runSteps(SQLite::Database& db, std::span<const SchemaStep> steps, const Headway& headway) {
    const ForeignKeysOff off(db);
    SQLite::Transaction transaction(db, SQLite::TransactionBehavior::IMMEDIATE);
    // not before: another window may have taken the steps while this one waited for the lock
    const std::int64_t from = pragmaNumber(db, "user_version");
    double done = 0;
    const auto all = static_cast<double>(steps.size());
    for (const SchemaStep& step : steps) {
        const Headway stretch = headway.part(done / all, (done + 1) / all);
        done += 1;
        if (step.version <= from) continue;
        db.exec(step.sql);
        requireNoOrphans(db, stretch);
        if (step.version == kFirstWithDigests) giveDigests(db);
        db.exec("PRAGMA application_id=" + std::to_string(kApplicationId));
        db.exec("PRAGMA user_version=" + std::to_string(step.version));
    }
    const bool taken = pragmaNumber(db, "user_version") != from;
    if (taken) transaction.commit();
    return taken;
}

} // namespace hammerline
