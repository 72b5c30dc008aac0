// What the book stands on, for the About box: nothing above this floor sees SQLite.
#pragma once

#include <string>
#include <vector>

namespace hammerline {

struct LibraryRow {
    std::string name, version;
    std::string licence; // SPDX id, or "public domain"
};

/// Libraries of this floor and the floor below; the version is that of the library that runs, where it tells it.
std::vector<LibraryRow> librariesOfTheBook();

} // namespace hammerline
