// The shape of a book: exactly the tables and indexes of its schema. Anything else was not made by this program.
#pragma once

#include <SQLiteCpp/Database.h>

#include <map>
#include <string>

namespace hammerline {

/// Name -> "type\nSQL" of everything in the schema, SQLite's own tables left out.
std::map<std::string, std::string> shapeOf(SQLite::Database&);
/// The shape a book of that version has, from the steps compiled in.
const std::map<std::string, std::string>& expectedShape(int version);
/// The first thing that is missing, foreign or changed ("trigger:x"); empty: as it should be.
std::string foreignIn(SQLite::Database&, int version);
/// For a book of a newer version: the first trigger, view or virtual table, which no schema of ours has.
std::string activeIn(SQLite::Database&);

} // namespace hammerline
