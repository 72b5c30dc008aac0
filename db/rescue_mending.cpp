#include "db/acts.h"
#include "db/picture_store.h"
#include "db/rescue.h"
#include "db/stores.h"
#include "db/versions.h"

namespace hammerline {
namespace {

std::vector<std::int64_t> numbers(OpenBook& book, const std::string& sql) {
    Query find = book.query(sql);
    std::vector<std::int64_t> found;
    while (find.step())
        found.push_back(find.number(0));
    return found;
}

void run(OpenBook& book, const std::string& sql) {
    book.db.exec(sql);
}

/// Every column that names a row of a kind, as one list of numbers.
std::string namedAnywhere(Points kind) {
    std::string sql;
    for (const RescueTable& table : rescueTables())
        for (const TableColumn& column : table.columns)
            if (column.points == kind)
                sql += (sql.empty() ? "" : " UNION ") + ("SELECT " + std::string(column.name) + " AS n FROM ") +
                       table.name;
    return sql;
}
std::vector<std::int64_t> lost(OpenBook& book, Points kind, const std::string& table) {
    return numbers(book, "SELECT n FROM (" + namedAnywhere(kind) +
                             ") WHERE n IS NOT NULL AND n NOT IN (SELECT id FROM " + table + ") ORDER BY n");
}

/// A session of the rescue stands in for those that are lost: no two acts of it get the same number.
std::int64_t standInSession(OpenBook& book) {
    Query insert = book.query("INSERT INTO session (id, uuid, started_at, program) SELECT 1 + max(coalesce((SELECT "
                              "max(session_id) FROM act), 0), coalesce((SELECT max(id) FROM session), 0)), ?, ?, "
                              "'rescue'");
    insert << newUuid() << book.now();
    insert.run();
    return book.db.getLastInsertRowid();
}

/// Acts whose row is lost, and acts of lost sessions, become acts of the rescue: the rows they wrote stay.
void mendActs(OpenBook& book) {
    const std::int64_t session = standInSession(book);
    std::int64_t seq = 0;
    for (const std::int64_t act :
         numbers(book, "SELECT id FROM act WHERE session_id NOT IN (SELECT id FROM session) ORDER BY id")) {
        Query move = book.query("UPDATE act SET session_id = ?, seq = ? WHERE id = ?");
        move << session << ++seq << act;
        move.run();
    }
    for (const std::int64_t act : lost(book, Points::act, "act")) {
        Query insert = book.query("INSERT INTO act (id, session_id, seq, place, at, kind, source) SELECT ?1, ?2, ?3, 1 "
                                  "+ coalesce(max(place), "
                                  "0), coalesce(max(at), 0), 'settle', 'rescue' FROM act WHERE id < ?1");
        insert << act << session << ++seq;
        insert.run();
    }
    // in the order of their places, as verification asks of every session
    run(book, "UPDATE act SET seq = seq + 1000000000 WHERE session_id = " + std::to_string(session));
    run(book,
        "UPDATE act AS a SET seq = (SELECT count(*) FROM act b WHERE b.session_id = a.session_id AND (b.place, b.id) "
        "<= (a.place, a.id)) "
        "WHERE session_id = " +
            std::to_string(session));
    run(book, "DELETE FROM session WHERE id NOT IN (SELECT session_id FROM act)");
}

void mendDimensions(OpenBook& book) {
    for (const std::int64_t row : lost(book, Points::dimension, "dimension")) {
        Query insert = book.query("INSERT INTO dimension (id, key) VALUES (?, ?)");
        insert << row << "lost-" + std::to_string(row);
        insert.run();
    }
}

/// The earliest act that wrote under a key, or any: a stand-in needs one.
std::int64_t someAct(OpenBook& book, const std::string& condition) {
    const auto found = numbers(book, "SELECT coalesce(min(act_id), (SELECT min(id) FROM act)) FROM " + condition);
    if (found.empty()) fail(RefusalCode::damagedBook, {}, "act");
    return found.front();
}

void standInTag(OpenBook& book, const std::string& table, std::int64_t row, std::int64_t act,
                const std::string& columns, const std::string& values) {
    Query insert =
        book.query("INSERT INTO " + table + " (id, uuid, act_id" + columns + ") VALUES (?, ?, ?" + values + ")");
    insert << row << newUuid() << act;
    insert.run();
}

void mendPasses(OpenBook& book) {
    for (const std::int64_t pass : lost(book, Points::pass, "pass")) {
        auto pianos = numbers(book, "SELECT id FROM piano ORDER BY id");
        const std::int64_t act = someAct(book, "reading WHERE pass_id = " + std::to_string(pass));
        if (pianos.empty()) pianos = numbers(book, "SELECT piano_id FROM setup");
        if (pianos.empty()) pianos = {1};
        standInTag(book, "pass", pass, act, ", piano_id, started_at", ", " + std::to_string(pianos.front()) + ", 0");
    }
    for (const std::int64_t pass :
         numbers(book, "SELECT id FROM pass WHERE id NOT IN (SELECT pass_id FROM pass_version)")) {
        Query insert = book.query("INSERT INTO pass_version (pass_id, act_id, label) SELECT id, act_id, 'rescued' FROM "
                                  "pass WHERE id = ?");
        insert << pass;
        insert.run();
    }
}

void mendPianos(OpenBook& book) {
    for (const std::int64_t piano : lost(book, Points::piano, "piano"))
        standInTag(book, "piano", piano, someAct(book, "setup WHERE piano_id = " + std::to_string(piano)), {}, {});
    for (const std::int64_t piano :
         numbers(book, "SELECT id FROM piano WHERE id NOT IN (SELECT piano_id FROM setup)")) {
        Query insert =
            book.query("INSERT INTO setup (piano_id, act_id, name, action, notes, lowest) SELECT id, act_id, "
                       "'Rescued piano ' || id, 'upright', 88, 21 FROM piano WHERE id = ?");
        insert << piano;
        insert.run();
    }
}

/// What a row replaced is lost: it stands alone now. Details of lost versions and versions of lost plans say nothing.
void mendVersions(OpenBook& book) {
    run(book, "UPDATE done SET plan_id = NULL WHERE plan_id NOT IN (SELECT id FROM plan)");
    run(book, "DELETE FROM plan_version WHERE plan_id NOT IN (SELECT id FROM plan)");
    run(book, "INSERT INTO plan_version (plan_id, act_id) SELECT id, act_id FROM plan WHERE id NOT IN (SELECT plan_id "
              "FROM plan_version)");
    run(book, "DELETE FROM photo WHERE hash NOT IN (SELECT hash FROM picture)");
    for (const Subject& subject : subjects()) {
        const std::string table(subject.table), same = list(subject.key, "n.% = x.%", " AND ");
        run(book, "UPDATE " + table +
                      " AS x SET replaces = NULL WHERE replaces IS NOT NULL AND NOT EXISTS (SELECT 1 FROM " + table +
                      " n WHERE " + same + " AND n.act_id = x.replaces)");
        for (const Detail& detail : subject.details)
            run(book, "DELETE FROM " + std::string(detail.table) + " AS x WHERE NOT EXISTS (SELECT 1 FROM " + table +
                          " n WHERE " + same + " AND n.act_id = x.act_id)");
    }
}

void mendBookRow(OpenBook& book) {
    Query insert = book.query("INSERT OR IGNORE INTO book (id, uuid, made_at, made_by, oldest_reader) VALUES (1, ?, ?, "
                              "'rescue', 1)");
    insert << newUuid() << book.now();
    insert.run();
    run(book, "UPDATE book SET merged_place = max(merged_place, (SELECT coalesce(max(place), 0) FROM act))");
}

} // namespace

void mendRescued(OpenBook& book) {
    SQLite::Transaction transaction(book.db, SQLite::TransactionBehavior::IMMEDIATE);
    mendActs(book);
    mendDimensions(book);
    mendPictures(book);
    mendVersions(book);
    mendPasses(book);
    mendPianos(book);
    mendBookRow(book);
    transaction.commit();
}

} // namespace hammerline
