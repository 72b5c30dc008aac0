#include "db/schema_shape.h"

#include "db/schema_steps.h"

#include <SQLiteCpp/Statement.h>

namespace hammerline {

std::map<std::string, std::string> shapeOf(SQLite::Database& db) {
    // SQLite itself takes a word of its schema for what it says, even where a flipped bit has made it bytes
    SQLite::Statement find(db, "SELECT type, name, coalesce(sql, ''), tbl_name, typeof(type) || typeof(name) || "
                               "typeof(tbl_name) || iif(sql IS NULL, 'text', typeof(sql)) FROM sqlite_schema");
    std::map<std::string, std::string> shape;
    while (find.executeStep()) {
        const std::string name = find.getColumn(1).getString();
        if (name.starts_with("sqlite_stat")) continue; // left by ANALYZE: harmless
        shape[name] = find.getColumn(0).getString();
        for (const int column : {2, 3, 4})
            shape[name] += '\n' + find.getColumn(column).getString();
    }
    return shape;
}

const std::map<std::string, std::string>& expectedShape(int version) {
    static std::map<int, std::map<std::string, std::string>> shapes;
    auto found = shapes.find(version);
    if (found == shapes.end()) {
        SQLite::Database empty(":memory:", SQLite::OPEN_READWRITE);
        for (const SchemaStep& step : schemaSteps())
            if (step.version <= version) empty.exec(step.sql);
        found = shapes.emplace(version, shapeOf(empty)).first;
    }
    return found->second;
}

std::string foreignIn(SQLite::Database& db, int version) {
    const auto found = shapeOf(db);
    const auto& expected = expectedShape(version);
    for (const auto& [name, shape] : found)
        if (!expected.contains(name) || expected.at(name) != shape)
            return shape.substr(0, shape.find('\n')) + ":" + name;
    for (const auto& [name, shape] : expected)
        if (!found.contains(name)) return "missing:" + name;
    return {};
}

std::string activeIn(SQLite::Database& db) {
    for (const auto& [name, shape] : shapeOf(db)) {
        const std::string type = shape.substr(0, shape.find('\n'));
        if (type == "trigger" || type == "view") return type + ":" + name;
        if (shape.find("VIRTUAL") != std::string::npos) return "virtual:" + name;
    }
    return {};
}

} // namespace hammerline
