#include "db/migration.h"

#include "db/connection.h"
#include "db/file_header.h"
#include "db/guard.h"

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

void runSteps(SQLite::Database& db, int from, std::span<const SchemaStep> steps, const Headway& headway) {
    const ForeignKeysOff off(db);
    double done = 0;
    for (const SchemaStep& step : steps) {
        const Headway stretch =
            headway.part(done / static_cast<double>(steps.size()), (done + 1) / static_cast<double>(steps.size()));
        done += 1;
        if (step.version <= from) continue;
        SQLite::Transaction transaction(db, SQLite::TransactionBehavior::IMMEDIATE);
        // another window may have taken the step while this one waited for the lock
        if (pragmaNumber(db, "user_version") >= step.version) continue;
        db.exec(step.sql);
        requireNoOrphans(db, stretch);
        db.exec("PRAGMA application_id=" + std::to_string(kApplicationId));
        db.exec("PRAGMA user_version=" + std::to_string(step.version));
        transaction.commit();
    }
}

} // namespace hammerline
