// Whatever is changed in a book from outside, by a hand or by a bit that flips: verify does not call it sound.
#include "tests/db/bench.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdlib>
#include <map>
#include <random>
#include <set>

using namespace hammerline;
using namespace hammerline::bench;

namespace fs = std::filesystem;

namespace {

SQLite::Database openedForEdits(const std::string& path) {
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    for (const char* off : {"PRAGMA foreign_keys=OFF", "PRAGMA ignore_check_constraints=ON", "PRAGMA synchronous=OFF"})
        db.exec(off);
    return db;
}

std::vector<std::string> listed(SQLite::Database& db, const std::string& sql) {
    SQLite::Statement find(db, sql);
    std::vector<std::string> all;
    while (find.executeStep())
        all.push_back(find.getColumn(0).getString());
    return all;
}

struct EditColumn {
    std::string name;
    bool inKey = false, mayBeNull = false;
};
struct EditTable {
    std::string name, key; // the columns of its key, with commas
    std::vector<EditColumn> columns;
};

/// The book's own schema, so that no table and no column is forgotten.
std::vector<EditTable> tablesOf(SQLite::Database& db) {
    std::vector<EditTable> all;
    for (const std::string& name : listed(db, "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")) {
        EditTable table{name, {}, {}};
        SQLite::Statement find(db,
                               "SELECT name, pk, \"notnull\" FROM pragma_table_info('" + name + "') ORDER BY pk, cid");
        while (find.executeStep()) {
            const EditColumn column{find.getColumn(0).getString(), find.getColumn(1).getInt() > 0,
                                    find.getColumn(2).getInt() == 0};
            if (column.inKey) table.key += (table.key.empty() ? "" : ", ") + column.name;
            table.columns.push_back(column);
        }
        all.push_back(table);
    }
    return all;
}

/// Every row with every column: two books with the same text hold the same.
std::string allRows(const std::string& path) {
    SQLite::Database db(path, SQLite::OPEN_READONLY);
    std::string all;
    for (const EditTable& table : tablesOf(db)) {
        std::string columns;
        for (const EditColumn& column : table.columns)
            columns += (columns.empty() ? "quote(" : " || ',' || quote(") + column.name + ")";
        for (const std::string& row : listed(db, "SELECT " + columns + " FROM " + table.name + " ORDER BY 1"))
            all += table.name + ' ' + row + '\n';
    }
    return all;
}

struct Edit {
    std::string name, sql;
};

std::string another(const std::string& column) {
    return "CASE typeof(" + column + ") WHEN 'integer' THEN " + column + " + 1 WHEN 'blob' THEN zeroblob(length(" +
           column + ")) WHEN 'null' THEN 1 ELSE " + column + " || '1' END";
}

std::string nothing(const std::string& column) {
    return "CASE typeof(" + column + ") WHEN 'integer' THEN -" + column + " WHEN 'blob' THEN x'' ELSE '' END";
}

/// In one row, and not where that holds already.
Edit inOneRow(const EditTable& table, const std::string& column, const std::string& how, const std::string& becomes) {
    return {table.name + '.' + column + ' ' + how, "UPDATE OR REPLACE " + table.name + " SET " + column + " = " +
                                                       becomes + " WHERE (" + table.key + ") IN (SELECT " + table.key +
                                                       " FROM " + table.name + " WHERE " + column + " IS NOT " +
                                                       becomes + " LIMIT 1)"};
}

/// What two rows hold in a column changes places.
Edit swapped(const EditTable& table, const std::string& column) {
    const std::string from = " FROM " + table.name, value = "SELECT " + column + from;
    const std::string first = '(' + value + " ORDER BY 1 LIMIT 1)", last = '(' + value + " ORDER BY 1 DESC LIMIT 1)";
    const auto rowOf = [&](const std::string& held) {
        return "(SELECT " + table.key + from + " WHERE " + column + " IS " + held + " LIMIT 1)";
    };
    const std::string rows =
        "((" + table.key + ") IN " + rowOf(first) + " OR (" + table.key + ") IN " + rowOf(last) + ')';
    return {table.name + '.' + column + " of two rows swapped",
            "UPDATE OR REPLACE " + table.name + " SET " + column + " = CASE WHEN " + column + " IS " + first +
                " THEN " + last + " ELSE " + first + " END WHERE " + rows};
}

Edit rowAdded(const EditTable& table) {
    std::string names, values;
    for (const EditColumn& column : table.columns) {
        const bool last = table.key == column.name || table.key.ends_with(", " + column.name);
        const bool unique = column.name == "uuid" || column.name == "hash" || (table.name == "dimension");
        const bool acts = table.name == "act" && column.name == "seq";
        names += (names.empty() ? "" : ", ") + column.name;
        values += (values.empty() ? "" : ", ") +
                  (unique && !last ? "substr(hex(randomblob(40)), 1, length(" + column.name + "))"
                   : acts          ? "seq + 1000"
                   : last ? "iif(typeof(" + column.name + ") = 'integer', 1 + (SELECT max(" + column.name + ") FROM " +
                                table.name + "), " + column.name + " || '1')"
                          : column.name);
    }
    if (values.find("uuid") != values.npos || names.find("uuid") != names.npos) {
        const std::string text = "substr(hex(randomblob(40)), 1, length(uuid))";
        values.replace(values.find(text), text.size(), "randomblob(16)");
    }
    return {table.name + " one row more",
            "INSERT INTO " + table.name + " (" + names + ") SELECT " + values + " FROM " + table.name + " LIMIT 1"};
}

std::vector<Edit> editsOf(const EditTable& table) {
    const std::string one = " WHERE (" + table.key + ") IN (SELECT " + table.key + " FROM " + table.name;
    std::vector<Edit> all = {rowAdded(table),
                             {table.name + " its first row deleted", "DELETE FROM " + table.name + one + " LIMIT 1)"},
                             {table.name + " its last row deleted",
                              "DELETE FROM " + table.name + one + " ORDER BY " + table.key + " DESC LIMIT 1)"},
                             {table.name + " all rows deleted", "DELETE FROM " + table.name}};
    for (const EditColumn& column : table.columns) {
        all.push_back(inOneRow(table, column.name, "changed", another(column.name)));
        all.push_back(inOneRow(table, column.name, "emptied or negated", nothing(column.name)));
        if (column.mayBeNull) all.push_back(inOneRow(table, column.name, "taken away", "NULL"));
        if (!column.inKey) all.push_back(swapped(table, column.name));
    }
    return all;
}

/// What says nothing to anybody: a word in the dictionary that no row uses, the number under which a picture stands.
bool saysNothing(const Edit& edit) {
    return edit.name == "dimension one row more" || edit.name == "picture.id emptied or negated";
}

} // namespace

TEST_CASE("no kind of edit of any table and column is called sound") {
    const Folder folder = Folder::quick();
    const std::string path = fullBook(folder), work = folder.file("work.hammerline"), before = allRows(path);
    REQUIRE(isFoundSound(path));
    std::vector<EditTable> tables;
    {
        SQLite::Database db(path, SQLite::OPEN_READONLY);
        tables = tablesOf(db);
        for (const EditTable& table : tables) {
            INFO(table.name);
            CHECK(db.execAndGet("SELECT count(*) FROM " + table.name).getInt() > 0);
        }
    }
    int seen = 0;
    for (const EditTable& table : tables)
        for (const Edit& edit : editsOf(table)) {
            INFO(edit.name << ": " << edit.sql);
            fs::copy_file(path, work, fs::copy_options::overwrite_existing);
            openedForEdits(work).tryExec(edit.sql); // some the table itself does not take
            if (allRows(work) == before) continue;
            const bool sound = isFoundSound(work);
            CHECK(sound == saysNothing(edit));
            seen += sound ? 0 : 1;
        }
    CHECK(seen > 500);
}

TEST_CASE("edits that a book was once called sound with are seen") {
    const Folder folder = Folder::quick();
    const std::string path = fullBook(folder), work = folder.file("work.hammerline");
    const std::string last = "(SELECT max(id) FROM act)";
    const std::vector<std::string> edits = {
        "UPDATE reading SET value = value * 2 WHERE note = 5",
        "UPDATE reading SET note = 90 WHERE note = 5 AND pass_id = 1",
        "UPDATE reading SET pass_id = 2 WHERE pass_id = 1 AND note = 12",
        "UPDATE reading SET typed = '99' WHERE note = 7",
        "UPDATE reading SET unit = 'in' WHERE note = 7",
        "UPDATE reading SET withdrawn = 1 - withdrawn WHERE note = 9",
        "UPDATE reading SET taken = 1 - taken WHERE note = 9",
        "UPDATE reading SET replaces = NULL WHERE replaces IS NOT NULL",
        "DELETE FROM reading WHERE pass_id = 1",
        "DELETE FROM reading WHERE note = 44",
        "DELETE FROM reading WHERE act_id = " + last + "; DELETE FROM act WHERE id = " + last,
        "DELETE FROM act WHERE id = " + last,
        "UPDATE setup SET notes = 20",
        "UPDATE setup SET action = 'grand'",
        "UPDATE setup SET name = name || ' '",
        "UPDATE setup SET spec = 'no sheet'",
        "INSERT INTO setup_attribute SELECT piano_id, act_id, 77, 'a', 'b' FROM setup",
        "UPDATE pass_version SET label = 'other'",
        "UPDATE pass_version SET humidity = 999",
        "DELETE FROM pass_reference",
        "UPDATE pass SET started_at = started_at + 1",
        "UPDATE plan SET content = '{}'",
        "UPDATE plan SET options = '{}'",
        "UPDATE finding SET state = 'sound'",
        "DELETE FROM finding",
        "UPDATE aim_override SET nominal = nominal + 1",
        "DELETE FROM aim_override",
        "UPDATE done SET operation = 'turn-something'",
        "DELETE FROM done_note",
        "UPDATE preference SET value = 'mm'",
        "UPDATE act SET at = at - 1000000 WHERE id = 3",
        "UPDATE act SET brought = 1 WHERE id = 3",
        "UPDATE session SET program = 'other'",
        "UPDATE dimension SET key = 'drop' WHERE key = (SELECT max(key) FROM dimension)",
        "INSERT INTO act (session_id, seq, place, at, kind) SELECT session_id, seq + 1, place + 1, at, 'entry' FROM "
        "act "
        "WHERE id = " +
            last,
        "UPDATE book SET made_by = 'other'",
        "UPDATE seal SET last_act = last_act - 1",
        "DELETE FROM seal",
        "UPDATE act SET digest = NULL WHERE id = 2",
        // a word of the schema that one flipped bit has made bytes
        "PRAGMA writable_schema=ON; UPDATE sqlite_schema SET type = CAST(type AS BLOB) WHERE name = 'act'",
        "PRAGMA writable_schema=ON; UPDATE sqlite_schema SET name = CAST(name AS BLOB) WHERE name = 'finding'",
        "PRAGMA writable_schema=ON; UPDATE sqlite_schema SET tbl_name = CAST(tbl_name AS BLOB) WHERE name = 'done'",
    };
    for (const std::string& sql : edits) {
        INFO(sql);
        fs::copy_file(path, work, fs::copy_options::overwrite_existing);
        const std::string before = bytesOf(work);
        openedForEdits(work).exec(sql);
        CHECK(bytesOf(work) != before); // it changes something
        CHECK_FALSE(isFoundSound(work));
    }
}

TEST_CASE("a flipped bit that changes what a book holds is seen") {
    const Folder folder = Folder::quick();
    const std::string path = fullBook(folder), work = folder.file("work.hammerline");
    const std::string bytes = bytesOf(path), rows = allRows(path);
    std::mt19937 random(7);
    std::vector<std::size_t> written; // most of a small book is room on pages that nothing is written on yet
    for (std::size_t at = 0; at < bytes.size(); ++at)
        if (bytes[at] != 0) written.push_back(at);
    std::uniform_int_distribution<std::size_t> anywhere(0, bytes.size() - 1), where(0, written.size() - 1), bit(0, 7);
    const char* more = std::getenv("HAMMERLINE_FLIPS");
    int seen = 0, unused = 0;
    for (int flips = more ? std::atoi(more) : 300; flips > 0; --flips) {
        std::string flipped = bytes;
        const std::size_t at = flips % 4 == 0 ? anywhere(random) : written[where(random)], which = bit(random);
        flipped[at] = static_cast<char>(flipped[at] ^ (1 << which));
        std::ofstream(work, std::ios::binary | std::ios::trunc) << flipped;
        if (!isFoundSound(work)) {
            ++seen;
            continue;
        }
        INFO("byte " << at << ", bit " << which);
        CHECK(allRows(work) == rows);
        ++unused; // where nothing is kept
    }
    INFO(seen << " seen, " << unused << " change no row");
    CHECK(seen > unused);
}
