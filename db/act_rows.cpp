#include "db/act_rows.h"

#include "db/versions.h"

namespace hammerline {
namespace {

constexpr std::size_t kNamesRemembered = 4096;

/// What a column holds where nothing is said, from the text of its DEFAULT.
Value defaultOf(const std::string& sql) {
    if (sql.empty() || sql == "NULL") return {};
    if (sql.front() == '\'') return sql.substr(1, sql.size() - 2);
    return static_cast<std::int64_t>(std::stoll(sql));
}

std::map<std::string, Value> defaultsOf(SQLite::Database& db, const std::string& table) {
    std::map<std::string, Value> found;
    SQLite::Statement find(db, "SELECT name, coalesce(dflt_value, '') FROM pragma_table_info(?)");
    find.bind(1, table);
    while (find.executeStep())
        found[find.getColumn(0).getString()] = defaultOf(find.getColumn(1).getString());
    return found;
}

ActTable described(SQLite::Database& db, std::string_view name, const std::vector<TableColumn>& columns,
                   const std::string& from) {
    ActTable table{std::string(name), {}, "SELECT v.act_id"};
    const auto defaults = defaultsOf(db, table.name);
    for (const TableColumn& column : columns) {
        const auto known = defaults.find(std::string(column.name));
        if (known == defaults.end()) continue; // of a later schema: there it will hold its default
        table.columns.push_back({known->first, column.points, known->second});
        table.select += ", t." + known->first;
    }
    table.select += " FROM " + from + " WHERE v.act_id > ? ORDER BY v.act_id";
    return table;
}

/// The outer loop goes by the index of acts: a scan of all rows for one act, or a sort of them, is never wanted.
std::string inOrderOfActs(std::string_view table) {
    return std::string(table) + " v INDEXED BY " + std::string(table) + "_act CROSS JOIN ";
}

} // namespace

std::vector<ActTable> actTables(SQLite::Database& db) {
    std::vector<ActTable> all;
    for (const Tag& tag : tags()) {
        std::vector<TableColumn> columns = {{"uuid"}};
        columns.insert(columns.end(), tag.columns.begin(), tag.columns.end());
        all.push_back(
            described(db, tag.table, columns, inOrderOfActs(tag.table) + std::string(tag.table) + " t ON t.id = v.id"));
    }
    for (const Subject& subject : subjects()) {
        if (defaultsOf(db, std::string(subject.table)).empty()) continue; // a table of a later schema
        std::vector<TableColumn> columns = subject.key;
        for (const TableColumn& column :
             {TableColumn{"replaces", Points::act}, TableColumn{"origin", Points::act}, TableColumn{"withdrawn"}})
            columns.push_back(column);
        columns.insert(columns.end(), subject.content.begin(), subject.content.end());
        const std::string same = " t ON " + list(subject.key, "t.% = v.%", " AND ") + " AND t.act_id = v.act_id";
        const std::string outer = inOrderOfActs(subject.table);
        all.push_back(described(db, subject.table, columns, outer + std::string(subject.table) + same));
        for (const Detail& detail : subject.details) {
            std::vector<TableColumn> own = subject.key;
            own.insert(own.end(), detail.columns.begin(), detail.columns.end());
            all.push_back(described(db, detail.table, own, outer + std::string(detail.table) + same));
        }
    }
    return all;
}

void LastingNames::tell(Canonical& to, Points points, std::int64_t row) {
    if (points == Points::nowhere) {
        to << row;
        return;
    }
    auto& known = m_known[static_cast<std::size_t>(points)];
    if (known.size() > kNamesRemembered) known.clear();
    auto found = known.find(row);
    if (found == known.end()) found = known.emplace(row, look(points, row)).first;
    to << found->second;
}

std::string LastingNames::look(Points points, std::int64_t row) {
    static const std::array<std::string, 6> sql = {
        "",
        "SELECT s.uuid, a.seq FROM act a JOIN session s ON s.id = a.session_id WHERE a.id = ?",
        "SELECT uuid FROM piano WHERE id = ?",
        "SELECT uuid FROM pass WHERE id = ?",
        "SELECT uuid FROM plan WHERE id = ?",
        "SELECT key FROM dimension WHERE id = ?",
    };
    Query find = m_query(sql[static_cast<std::size_t>(points)]);
    find << row;
    if (!find.step()) return "nobody";
    std::string name = find.text(0); // sixteen bytes, or the word of a dimension
    if (points == Points::act) name += ':' + std::to_string(find.number(1));
    return name;
}

RowsByAct::RowsByAct(const ActTable& table, Statements& query, std::int64_t after)
    : m_table(table), m_rows(query(table.select)) {
    m_rows << after;
    next();
}

void RowsByAct::of(std::int64_t act, LastingNames& names, DigestSum& sum) {
    for (; m_there && m_act <= act; next()) {
        m_row.clear();
        m_row << m_table.name;
        for (std::size_t i = 0; i < m_table.columns.size(); ++i)
            tell(m_table.columns[i], m_rows.value(static_cast<int>(i) + 1), names);
        sum.add(m_row.digest());
    }
}

void RowsByAct::tell(const ToldColumn& column, const Value& value, LastingNames& names) {
    if (value == column.otherwise) return;
    m_row << column.name;
    if (const auto* number = std::get_if<std::int64_t>(&value))
        names.tell(m_row, column.points, *number);
    else if (const auto* text = std::get_if<std::string>(&value))
        m_row << *text;
    else
        m_row << "none"; // where the default is something else
}

void RowsByAct::next() {
    m_there = m_rows.step();
    if (m_there) m_act = m_rows.number(0);
}

} // namespace hammerline
