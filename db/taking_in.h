// Rows of another book, written into this one under its own numbers.
#pragma once

#include "db/headway.h"
#include "db/open_book.h"

namespace hammerline {

/// Whether the other book has an act that this one has not. Fails with damagedBook where the two have different acts
/// under the same name.
bool knowsMore(OpenBook&, OpenBook& other, const Headway&);
/// Inside a write transaction: every act that is not here yet, with all its rows. Fails where the other cannot be read.
Merged takeIn(OpenBook& into, OpenBook& from, const Headway&);

} // namespace hammerline
