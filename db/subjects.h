// The catalogue of what has versions in a book: undo, merge, verify and rescue go through it row by row and know no
// table by name.
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace hammerline {

/// What a column points at: such a number is local to a book and is translated by a merge.
enum class Points : std::uint8_t { nowhere, act, piano, pass, plan, dimension };
struct TableColumn {
    std::string_view name;
    Points points = Points::nowhere;
};

/// Rows that belong to one version: same key and act, further columns of their own.
struct Detail {
    std::string_view table;
    std::vector<TableColumn> columns;
    std::size_t named; // so many of the columns belong to the primary key
};

/// A table of versions: key columns, then act_id, replaces, origin, withdrawn, then its content.
struct Subject {
    std::string_view table;
    std::vector<TableColumn> key;
    std::vector<TableColumn> content;
    std::vector<Detail> details;
    int since = 1; // the schema that brought it
};
const std::vector<Subject>& subjects();
const Subject& subject(std::string_view table);

/// A name tag with a UUID that versions hang on.
struct Tag {
    std::string_view table;
    Points as;
    std::vector<TableColumn> columns; // besides id, uuid and act_id
    std::string_view versions;        // its subject
    std::string_view versionsKey;     // the column there
};
const std::vector<Tag>& tags();

} // namespace hammerline
