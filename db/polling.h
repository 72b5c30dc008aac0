#pragma once

#include "db/open_book.h"

namespace hammerline {

Change pollBook(OpenBook&);

} // namespace hammerline
