#include "tests/soak/mutated_rows.h"

#include <cstdio>
#include <cstdlib>
#include <limits>

namespace hammerline::soak {
namespace {

using Value = std::variant<std::monostate, std::int64_t, std::string>;
using Values = std::vector<Value>;

constexpr char kBlob = '\x7f'; // the first byte of what is no text

[[noreturn]] void broken(const std::string& what) {
    std::fprintf(stderr, "mutated rows: %s\n", what.c_str());
    std::exit(1);
}

Value valueOf(sqlite3_stmt* statement, int column) {
    const int type = sqlite3_column_type(statement, column);
    if (type == SQLITE_NULL) return {};
    if (type == SQLITE_INTEGER) return static_cast<std::int64_t>(sqlite3_column_int64(statement, column));
    const auto* bytes = static_cast<const char*>(sqlite3_column_blob(statement, column));
    const auto size = static_cast<std::size_t>(sqlite3_column_bytes(statement, column));
    std::string text = type == SQLITE_BLOB ? std::string(1, kBlob) : std::string();
    return size > 0 ? text.append(bytes, size) : text;
}

std::string where(const std::vector<Values>& columns) {
    std::string sql;
    for (const Values& column : columns)
        sql += (sql.empty() ? "\"" : " AND \"") + std::get<std::string>(column.front()) + "\" IS ?";
    return sql;
}

std::string shown(const Value& value) {
    if (const auto* number = std::get_if<std::int64_t>(&value)) return std::to_string(*number);
    if (const auto* text = std::get_if<std::string>(&value)) return '"' + text->substr(0, 30) + '"';
    return "null";
}

} // namespace

MutatedRows::MutatedRows(const std::filesystem::path& book, unsigned seed) : m_chance(seed) {
    sqlite3* db = nullptr;
    if (sqlite3_open(book.c_str(), &db) != SQLITE_OK) broken("the book does not open");
    m_db.reset(db);
    for (const char* off : {"PRAGMA foreign_keys=OFF", "PRAGMA ignore_check_constraints=ON", "PRAGMA synchronous=0"})
        (void)ask(off);
    for (auto& row : ask("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name"))
        m_tables.push_back(std::get<std::string>(row.front()));
}

std::size_t MutatedRows::below(std::size_t count) {
    return std::uniform_int_distribution<std::size_t>(0, count - 1)(m_chance);
}

std::string MutatedRows::change() {
    const std::string& table = pick(m_tables);
    const auto columns = ask("SELECT name, type FROM pragma_table_info('" + table + "')");
    const auto rows = ask("SELECT * FROM \"" + table + "\"");
    if (rows.empty()) return {};
    const Values& row = pick(rows);
    const std::size_t column = below(columns.size());
    const std::string name = std::get<std::string>(columns[column].front());
    const std::size_t kind = below(10);
    if (kind == 0) {
        (void)ask("DELETE FROM \"" + table + "\" WHERE " + where(columns), row);
        return table + ": a row deleted";
    }
    if (kind <= 2) {
        const Values& other = pick(rows);
        set(table, name, columns, row, other[column]);
        set(table, name, columns, other, row[column]);
        return table + '.' + name + ": swapped";
    }
    const Value fresh = any(std::get<std::string>(columns[column].back()), row[column]);
    set(table, name, columns, row, fresh);
    return table + '.' + name + " = " + shown(fresh);
}

/// What the table does not take (a key that is there already) is not done.
std::vector<MutatedRows::Values> MutatedRows::ask(const std::string& sql, const Values& bound) {
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(m_db.get(), sql.c_str(), -1, &statement, nullptr) != SQLITE_OK)
        broken(sql + ": " + sqlite3_errmsg(m_db.get()));
    for (std::size_t i = 0; i < bound.size(); ++i) {
        const int at = static_cast<int>(i) + 1;
        if (const auto* number = std::get_if<std::int64_t>(&bound[i])) sqlite3_bind_int64(statement, at, *number);
        const auto* text = std::get_if<std::string>(&bound[i]);
        if (text && text->starts_with(kBlob))
            sqlite3_bind_blob(statement, at, text->data() + 1, static_cast<int>(text->size()) - 1, SQLITE_TRANSIENT);
        else if (text)
            sqlite3_bind_text(statement, at, text->data(), static_cast<int>(text->size()), SQLITE_TRANSIENT);
    }
    std::vector<Values> rows;
    while (sqlite3_step(statement) == SQLITE_ROW) {
        Values row;
        for (int i = 0; i < sqlite3_column_count(statement); ++i)
            row.push_back(valueOf(statement, i));
        rows.push_back(std::move(row));
    }
    sqlite3_finalize(statement);
    return rows;
}

void MutatedRows::set(const std::string& table, const std::string& name, const std::vector<Values>& columns,
                      const Values& row, const Value& value) {
    Values bound = row;
    bound.insert(bound.begin(), value);
    (void)ask("UPDATE \"" + table + "\" SET \"" + name + "\" = ? WHERE " + where(columns), bound);
}

MutatedRows::Value MutatedRows::any(const std::string& type, const Value& old) {
    if (below(12) == 0) return {};
    const auto* number = std::get_if<std::int64_t>(&old);
    if (type == "INTEGER") return anyNumber(number ? *number : 0);
    const auto* text = std::get_if<std::string>(&old);
    const std::string was = text ? *text : std::string();
    return type == "BLOB" ? anyBytes(was) : anyText(was);
}

std::int64_t MutatedRows::anyNumber(std::int64_t was) {
    constexpr auto least = std::numeric_limits<std::int64_t>::min(), most = std::numeric_limits<std::int64_t>::max();

    const std::vector<std::int64_t> values = {-1,
                                              0,
                                              1,
                                              2,
                                              4,
                                              5,
                                              19,
                                              87,
                                              88,
                                              89,
                                              108,
                                              109,
                                              127,
                                              128,
                                              1000,
                                              1LL << 31,
                                              1LL << 32,
                                              1LL << 62,
                                              2147483647,
                                              -2147483648LL,
                                              least,
                                              most,
                                              1'000'000'000'000,
                                              -1'000'000'000'001,
                                              was ^ 1,
                                              was ^ 1024,
                                              was / 2,
                                              most - 1,
                                              least + 1};
    return pick(values);
}

std::string MutatedRows::anyText(const std::string& was) {
    const std::vector<std::string> values = {"",
                                             " ",
                                             std::string(10'000, 'x'),
                                             "\x01\x1b[31m",
                                             "%1%2%n%s",
                                             "{}",
                                             "[]",
                                             "[[[[[[[[",
                                             "null",
                                             "-1",
                                             "0",
                                             "99999999999999999999",
                                             "1e308",
                                             "2026-99-01",
                                             "\xff\xfe",
                                             "<b>&",
                                             "1-88,99-100",
                                             "88-1",
                                             "5-4",
                                             "1-2147483647",
                                             "upright",
                                             "grand",
                                             "drop",
                                             "let-off",
                                             "sound",
                                             "..",
                                             "word",
                                             "=",
                                             was + was,
                                             was.substr(0, was.size() / 2),
                                             "." + was,
                                             was + "9"};
    return pick(values);
}

std::string MutatedRows::anyBytes(std::string was) {
    const std::size_t kind = below(3);
    if (kind == 0) return std::string(1, kBlob) + std::string(16, '\0');
    if (kind == 1) return was.substr(0, 1 + was.size() / 2);
    if (was.size() > 1) was[1 + below(was.size() - 1)] ^= static_cast<char>(1U << below(8));
    return was;
}

} // namespace hammerline::soak
