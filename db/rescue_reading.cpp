#include "db/rescue.h"
#include "db/versions.h"

#include <SQLiteCpp/Transaction.h>
#include <sqlite3.h>

#include <algorithm>
#include <map>
#include <set>

namespace hammerline {
namespace {

constexpr int kMostFailures = 100'000; // in one table: then what is left of it counts as lost
constexpr std::int64_t kUnknownRows = 100'000;
constexpr std::size_t kRowsBetweenLooks = 500; // some milliseconds
constexpr double kLooksHalfWay = 200;
constexpr std::int64_t kNotes = 108, kItems = 1000, kSpare = 256, kSpareDimensions = 64;

/// One table, read in stretches of its primary key: where a stretch cannot be read to its end, its halves are tried,
/// then the next column of the key, down to the page that is damaged.
class Stretches {
public:
    Stretches(SQLite::Database& damaged, SQLite::Database& into, const RescueTable& table, Rescued& rescued,
              const Headway& headway)
        : m_damaged(damaged)
        , m_into(into)
        , m_table(table)
        , m_rescued(rescued)
        , m_headway(headway)
        , m_insert(into, insertSql()) {
        for (std::size_t i = 0; i < table.split; ++i)
            m_bounds.push_back(boundOf(table.columns[i]));
    }

    void read() { stretch({}, 0, m_bounds.front()); }

private:
    /// How far numbers of a key column go: a little beyond what is known, for what points at rows that are lost.
    std::int64_t boundOf(const TableColumn& column) {
        const auto largest = [&](const char* table) {
            return kSpare + m_into.execAndGet("SELECT coalesce(max(id), 0) FROM " + std::string(table)).getInt64();
        };
        switch (column.points) {
        case Points::act:
            return kUnknownRows / 10 + largest("act");
        case Points::piano:
            return largest("piano");
        case Points::pass:
            return largest("pass");
        case Points::plan:
            return largest("plan");
        case Points::dimension:
            return largest("dimension") - kSpare + kSpareDimensions;
        case Points::nowhere:
            break;
        }
        if (column.name == "id") return lastId();
        return column.name == "item" ? kItems : kNotes;
    }
    std::int64_t lastId() {
        try {
            return m_damaged.execAndGet("SELECT coalesce(max(id), 0) FROM " + m_table.name).getInt64();
        } catch (const SQLite::Exception&) {
            return kUnknownRows;
        }
    }

    std::string insertSql() const {
        return "INSERT INTO " + m_table.name + " (" + list(m_table.columns) + ") VALUES (" +
               list(m_table.columns, "?") + ")";
    }

    std::string selectSql(std::size_t fixed, bool backwards) const {
        const std::vector<TableColumn> key(m_table.columns.begin(),
                                           m_table.columns.begin() + static_cast<std::ptrdiff_t>(m_table.key));
        std::string sql = "SELECT " + list(m_table.columns) + " FROM " + m_table.name + " WHERE ";
        for (std::size_t i = 0; i < fixed; ++i)
            sql += std::string(key[i].name) + " = ? AND ";
        return sql + std::string(key[fixed].name) + " BETWEEN ? AND ? ORDER BY " +
               list(key, backwards ? "% DESC" : "%");
    }

    void stretch(const std::vector<std::int64_t>& fixed, std::int64_t low, std::int64_t high) {
        look();
        if (whole(fixed, low, high, false)) return;
        if (++m_failures > kMostFailures) return unreadable();
        if (low < high) {
            const std::int64_t middle = low + (high - low) / 2;
            stretch(fixed, low, middle);
            stretch(fixed, middle + 1, high);
            return;
        }
        if (fixed.size() + 1 < m_table.split) {
            std::vector<std::int64_t> deeper = fixed;
            deeper.push_back(low);
            return stretch(deeper, 0, m_bounds[deeper.size()]);
        }
        whole(fixed, low, high, true); // and from the other end
        unreadable();
    }

    /// Stretches that follow each other with no row between them are one place.
    void unreadable() {
        if (!m_broken) ++m_rescued.lost;
        m_broken = true;
    }

    /// How many rows there are cannot be known: the way goes on ever more slowly.
    void look() { m_headway.at(1 - 1 / (1 + static_cast<double>(++m_looks) / kLooksHalfWay)); }

    /// False: the stretch could not be read to its end.
    bool whole(const std::vector<std::int64_t>& fixed, std::int64_t low, std::int64_t high, bool backwards) {
        SQLite::Statement* find = nullptr;
        try {
            find = &statement(fixed.size(), backwards);
            int at = 0;
            for (const std::int64_t value : fixed)
                find->bind(++at, value);
            find->bind(++at, low);
            find->bind(++at, high);
            while (find->executeStep())
                keep(*find);
            find->reset();
            return true;
        } catch (const SQLite::Exception&) { // a page that makes no sense: the halves are tried
            if (find) find->tryReset();
            return false;
        }
    }

    SQLite::Statement& statement(std::size_t fixed, bool backwards) {
        const std::pair name{fixed, backwards};
        auto known = m_finds.find(name);
        if (known == m_finds.end())
            known = m_finds.emplace(name, SQLite::Statement(m_damaged, selectSql(fixed, backwards))).first;
        return known->second;
    }

    void keep(SQLite::Statement& row) {
        if (++m_rows % kRowsBetweenLooks == 0) look();
        m_insert.reset();
        for (int i = 0; i < static_cast<int>(m_table.columns.size()); ++i)
            bindSame(row.getColumn(i), i + 1);
        try {
            m_insert.exec();
            ++m_rescued.rows;
            m_broken = false;
        } catch (const SQLite::Exception& refused) {
            const int why = refused.getExtendedErrorCode();
            // read before, from a longer stretch
            if (why == SQLITE_CONSTRAINT_PRIMARYKEY || why == SQLITE_CONSTRAINT_ROWID) return;
            if ((refused.getErrorCode() & 0xff) != SQLITE_CONSTRAINT) // the new book cannot be written
                throw Refused{refusalInFlight(m_into.getFilename(), Doing::writing)};
            ++m_rescued.lost;
        }
    }

    void bindSame(const SQLite::Column& value, int at) {
        if (value.isInteger())
            m_insert.bind(at, value.getInt64());
        else if (value.isBlob())
            m_insert.bind(at, value.getBytes() > 0 ? value.getBlob() : "", value.getBytes()); // none of them is no NULL
        else if (value.isNull())
            m_insert.bind(at);
        else
            m_insert.bind(at, value.getString());
    }

    SQLite::Database &m_damaged, &m_into;
    const RescueTable& m_table;
    Rescued& m_rescued;
    Headway m_headway;
    std::size_t m_rows = 0, m_looks = 0;
    SQLite::Statement m_insert;
    std::map<std::pair<std::size_t, bool>, SQLite::Statement> m_finds;
    std::vector<std::int64_t> m_bounds; // by key column
    int m_failures = 0;
    bool m_broken = false; // the last stretch could not be read
};

} // namespace

namespace {

/// The columns that the damaged book has: one of an older schema lacks the later ones, which then get their default.
RescueTable asThere(SQLite::Database& damaged, RescueTable table) {
    std::set<std::string, std::less<>> there;
    SQLite::Statement find(damaged, "SELECT name FROM pragma_table_info(?)");
    find.bind(1, table.name);
    while (find.executeStep())
        there.insert(find.getColumn(0).getString());
    const auto afterKey = table.columns.begin() + static_cast<std::ptrdiff_t>(table.key);
    table.columns.erase(std::remove_if(afterKey, table.columns.end(),
                                       [&](const TableColumn& column) { return !there.contains(column.name); }),
                        table.columns.end());
    return table;
}

/// A table that came with a later schema than the damaged book's was never there: nothing of it is lost.
bool neverThere(SQLite::Database& damaged, const RescueTable& table) {
    if (table.since == 1) return false;
    try {
        SQLite::Statement find(damaged, "SELECT 1 FROM sqlite_schema WHERE name = ?");
        find.bind(1, table.name);
        return !find.executeStep();
    } catch (const SQLite::Exception&) { // its list of tables cannot be read to the end
        return false;
    }
}

} // namespace

Rescued copyReadable(SQLite::Database& damaged, SQLite::Database& into, const Headway& headway) {
    Rescued rescued;
    SQLite::Transaction transaction(into, SQLite::TransactionBehavior::IMMEDIATE);
    const auto tables = static_cast<double>(rescueTables().size());
    for (std::size_t i = 0; i < rescueTables().size(); ++i) {
        if (neverThere(damaged, rescueTables()[i])) continue;
        const RescueTable known = asThere(damaged, rescueTables()[i]);
        const auto before = static_cast<double>(i);
        Stretches(damaged, into, known, rescued, headway.part(before / tables, (before + 1) / tables)).read();
    }
    transaction.commit();
    return rescued;
}

} // namespace hammerline
