// Two books that grew apart become one again (architecture, data rules): union by (session, seq) and UUID.
#pragma once

#include "db/headway.h"
#include "db/open_book.h"

namespace hammerline {

/// The other book is only read; this one gets a verified dated copy beside it first, unless nothing came.
Merged mergeBook(OpenBook&, const std::string& other, const Headway&);

} // namespace hammerline
