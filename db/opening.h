// From a path to an open book: header, connection, shape, schema steps, structure.
#pragma once

#include "db/open_book.h"
#include "db/schema_steps.h"

namespace hammerline {

std::unique_ptr<OpenBook> createBook(const std::string& path, Writer);
std::unique_ptr<OpenBook> openBook(const std::string& path, OpenMode, Writer);

/// Brings an older book to the newest of `steps` after a verified dated copy beside it; gives the copy's path, empty
/// where nothing was to do.
std::string migrateBook(const std::string& path, int version, std::span<const SchemaStep> steps, std::int64_t now);

} // namespace hammerline
