#include "db/libraries.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace hammerline {

std::vector<LibraryRow> librariesOfTheBook() {
    const auto dotted = [](int major, int minor, int patch) { return fmt::format("{}.{}.{}", major, minor, patch); };
    return {
        {.name = "SQLite", .version = SQLite::getLibVersion(), .licence = "public domain"},
        {.name = "SQLiteCpp", .version = SQLITECPP_VERSION, .licence = "MIT"},
        {.name = "fmt",
         .version = dotted(FMT_VERSION / 10000, FMT_VERSION / 100 % 100, FMT_VERSION % 100),
         .licence = "MIT"},
        {.name = "JSON for Modern C++",
         .version = dotted(NLOHMANN_JSON_VERSION_MAJOR, NLOHMANN_JSON_VERSION_MINOR, NLOHMANN_JSON_VERSION_PATCH),
         .licence = "MIT"},
        {.name = "tl::expected", .version = {}, .licence = "CC0-1.0"},
        {.name = "Boost", .version = {}, .licence = "BSL-1.0"},
    };
}

} // namespace hammerline
