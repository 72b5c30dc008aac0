#include "db/checks_at_end.h"

#include "db/guard.h"

#include <SQLiteCpp/Statement.h>

namespace hammerline {
namespace {

/// The end of what begins with an opening parenthesis at `from`: behind the one that closes it. Texts stand in single
/// quotes.
std::size_t behindParentheses(std::string_view sql, std::size_t from) {
    int depth = 0;
    bool quoted = false;
    for (std::size_t at = from; at < sql.size(); ++at) {
        if (sql[at] == '\'') quoted = !quoted;
        if (quoted) continue;
        depth += sql[at] == '(' ? 1 : sql[at] == ')' ? -1 : 0;
        if (depth == 0) return at + 1;
    }
    return sql.size();
}

/// Which rows of a table can have come with acts after one (the first parameter): all of a small table that has none.
std::string rowsSince(SQLite::Database& db, const std::string& table) {
    SQLite::Statement find(db, "SELECT count(*) FROM pragma_table_info(?) WHERE name = 'act_id'");
    find.bind(1, table);
    find.executeStep();
    if (find.getColumn(0).getInt() > 0) return "act_id > ?1";
    return table == "act" ? "id > ?1" : "?1 IS NOT NULL";
}

} // namespace

std::vector<std::string> checksIn(std::string_view createTable) {
    constexpr std::string_view kCheck = "CHECK (";
    std::vector<std::string> all;
    for (std::size_t at = createTable.find(kCheck); at != createTable.npos;) {
        const std::size_t from = at + kCheck.size() - 1, to = behindParentheses(createTable, from);
        all.emplace_back(createTable.substr(from, to - from));
        at = createTable.find(kCheck, to);
    }
    return all;
}

ChecksAtEnd::ChecksAtEnd(OpenBook& book) : m_book(book) {
    m_before = book.db.execAndGet("SELECT coalesce(max(id), 0) FROM act").getInt64();
    askAsWritten(false);
}

ChecksAtEnd::~ChecksAtEnd() {
    m_book.db.tryExec("PRAGMA ignore_check_constraints=OFF");
}

void ChecksAtEnd::askAsWritten(bool asked) {
    m_book.db.exec(asked ? "PRAGMA ignore_check_constraints=OFF" : "PRAGMA ignore_check_constraints=ON");
}

void ChecksAtEnd::ask() {
    askAsWritten(true);
    SQLite::Statement tables(m_book.db, "SELECT name, sql FROM sqlite_schema WHERE type = 'table'");
    while (tables.executeStep()) {
        const std::string table = tables.getColumn(0).getString();
        std::string all; // one that is unknown (NULL) holds, as it does in a CHECK
        for (const std::string& check : checksIn(tables.getColumn(1).getString()))
            all += (all.empty() ? "" : " AND ") + check;
        if (all.empty()) continue;
        SQLite::Statement broken(m_book.db, "SELECT 1 FROM " + table + " WHERE " + rowsSince(m_book.db, table) +
                                                " AND NOT (" + all + ") LIMIT 1");
        broken.bind(1, m_before);
        if (broken.executeStep()) fail(RefusalCode::damagedBook, m_book.path, "constraint");
    }
}

} // namespace hammerline
