// Prepared statements, kept and reset on every path: a statement left pending would hold the file's lock.
#pragma once

#include "db/digest.h"
#include "db/uuid.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <optional>
#include <utility>
#include <variant>

namespace hammerline {

/// What a column of ours may hold, uuids aside.
using Value = std::variant<std::monostate, std::int64_t, std::string>;

/// A borrowed statement: bind in order, step, read columns; reset when it goes out of scope.
class Query {
public:
    explicit Query(SQLite::Statement& statement) : m_statement(&statement) {}
    Query(Query&& other) noexcept : m_statement(std::exchange(other.m_statement, nullptr)), m_next(other.m_next) {}
    Query(const Query&) = delete;
    Query& operator=(const Query&) = delete;
    Query& operator=(Query&&) = delete;
    ~Query() {
        if (!m_statement) return;
        m_statement->tryReset();
        try {
            m_statement->clearBindings();
        } catch (const SQLite::Exception&) { // a statement that failed has nothing bound that matters
        }
    }

    Query& operator<<(std::int64_t value) { return m_statement->bind(m_next++, value), *this; }
    Query& operator<<(int value) { return *this << std::int64_t{value}; }
    Query& operator<<(bool value) { return *this << std::int64_t{value}; }
    Query& operator<<(const std::string& value) { return m_statement->bind(m_next++, value), *this; }
    Query& operator<<(std::string_view value) { return *this << std::string(value); }
    Query& operator<<(const char* value) { return *this << std::string(value); }
    Query& operator<<(const Uuid& value) {
        m_statement->bind(m_next++, value.data(), static_cast<int>(value.size()));
        return *this;
    }
    Query& operator<<(const Digest& value) {
        m_statement->bind(m_next++, value.data(), static_cast<int>(value.size()));
        return *this;
    }
    Query& operator<<(std::nullopt_t) { return m_statement->bind(m_next++), *this; }
    template <class T>
    Query& operator<<(const std::optional<T>& value) {
        return value ? *this << *value : *this << std::nullopt;
    }

    Query& put(const Value&);

    bool step() { return m_statement->executeStep(); }
    void run() { m_statement->exec(); }
    /// Runs again with other values.
    void again() {
        m_statement->reset();
        m_next = 1;
    }
    bool null(int column) const { return m_statement->getColumn(column).isNull(); }
    std::int64_t number(int column) const { return m_statement->getColumn(column).getInt64(); }
    int small(int column) const { return m_statement->getColumn(column).getInt(); }
    std::string text(int column) const { return m_statement->getColumn(column).getString(); }
    std::optional<std::int64_t> maybe(int column) const {
        return null(column) ? std::nullopt : std::optional(number(column));
    }
    Uuid uuid(int column) const;
    std::optional<Digest> digest(int column) const;
    Value value(int column) const;

private:
    SQLite::Statement* m_statement;
    int m_next = 1;
};

class Statements {
public:
    explicit Statements(SQLite::Database& db) : m_db(db) {}
    Query operator()(const std::string& sql);
    void clear() { m_kept.clear(); }

private:
    SQLite::Database& m_db;
    std::map<std::string, SQLite::Statement> m_kept;
};

} // namespace hammerline
