// The rows that belong to acts, told in a form that is the same in every book.
#pragma once

#include "db/digest.h"
#include "db/statements.h"
#include "db/subjects.h"

namespace hammerline {

/// A column as it is told: by name, left out where it holds its default.
struct ToldColumn {
    std::string name;
    Points points;
    Value otherwise;
};
struct ActTable {
    std::string name;
    std::vector<ToldColumn> columns;
    std::string select; // its rows after an act, in the order of acts: act_id, then the columns
};
/// Tags, versions and details, with those columns of the catalogue that this book has.
std::vector<ActTable> actTables(SQLite::Database&);

/// Names, the same in every book, of the rows that numbers mean; the last ones are remembered.
class LastingNames {
public:
    explicit LastingNames(Statements& query) : m_query(query) {}
    void tell(Canonical& to, Points points, std::int64_t row);

private:
    std::string look(Points points, std::int64_t row);

    Statements& m_query;
    std::array<std::map<std::int64_t, std::string>, 6> m_known;
};

/// The rows of one table, act by act.
class RowsByAct {
public:
    RowsByAct(const ActTable& table, Statements& query, std::int64_t after);
    /// Adds the rows of an act. Acts are asked for in their order.
    void of(std::int64_t act, LastingNames& names, DigestSum& sum);

private:
    void tell(const ToldColumn& column, const Value& value, LastingNames& names);
    void next();

    const ActTable& m_table;
    Query m_rows;
    Canonical m_row;
    bool m_there = false;
    std::int64_t m_act = 0;
};

} // namespace hammerline
