// A book changed by SQL, with every CHECK and foreign key put aside: what a damaged disk or another program may leave.
#pragma once

#include <sqlite3.h>

#include <cstdint>
#include <filesystem>
#include <memory>
#include <random>
#include <string>
#include <variant>
#include <vector>

namespace hammerline::soak {

class MutatedRows {
public:
    MutatedRows(const std::filesystem::path& book, unsigned seed);

    /// One change: a random value in a random column, values of two rows swapped, or a row deleted; as words.
    std::string change();

private:
    using Value = std::variant<std::monostate, std::int64_t, std::string>;
    using Values = std::vector<Value>;
    struct Close {
        void operator()(sqlite3* db) const { sqlite3_close(db); }
    };

    std::size_t below(std::size_t count);
    template <class T>
    const T& pick(const std::vector<T>& all) {
        return all[below(all.size())];
    }
    std::vector<Values> ask(const std::string& sql, const Values& bound = {});
    void set(const std::string& table, const std::string& name, const std::vector<Values>& columns, const Values& row,
             const Value& value);
    Value any(const std::string& type, const Value& old);
    std::int64_t anyNumber(std::int64_t was);
    std::string anyText(const std::string& was);
    std::string anyBytes(std::string was);

    std::unique_ptr<sqlite3, Close> m_db;
    std::vector<std::string> m_tables;
    std::mt19937 m_chance;
};

} // namespace hammerline::soak
