// Names of pianos and numbers of passes, by row.
#pragma once

#include "db/open_book.h"

#include <map>

namespace hammerline {

/// Those taken back are left out: what is said of them concerns nobody.
struct Directory {
    std::map<std::int64_t, std::string> pianos;
    std::map<std::int64_t, std::pair<std::string, int>> passes;

    explicit Directory(OpenBook&);
};

} // namespace hammerline
