// From a path to an open book: header, connection, shape, schema steps, structure.
#pragma once

#include "db/headway.h"
#include "db/open_book.h"
#include "db/schema_steps.h"

namespace hammerline {

/// `fill` is given the book before it has its name: where it throws there is none.
std::unique_ptr<OpenBook> createBook(const std::string& path, Writer,
                                     const std::function<void(std::unique_ptr<OpenBook>)>& fill = {});
/// An older book is brought up to date where it is opened for writing; where it is only read, a copy in memory is, and
/// nothing is written beside it.
std::unique_ptr<OpenBook> openBook(const std::string& path, OpenMode, Writer, const Headway&);

/// Brings an older book to the newest of `steps` after a verified dated copy beside it; gives the copy's path, empty
/// where nothing was to do.
std::string migrateBook(const std::string& path, int version, std::span<const SchemaStep> steps, std::int64_t now,
                        const Headway&);

} // namespace hammerline
