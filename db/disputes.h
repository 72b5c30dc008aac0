// What stands twice in a book and not alike.
#pragma once

#include "db/open_book.h"

namespace hammerline {

/// By subject, then key. One scan a table; a book that was never merged has none.
std::vector<Dispute> disputesIn(OpenBook&);

} // namespace hammerline
