#include "core/intake/intake.h"

#include <array>

namespace hammerline {

std::string_view key(Doubt doubt) {
    constexpr std::array<std::string_view, 9> keys = {"none",         "unreadable",    "out-of-range",
                                                      "likely-slip",  "date",          "duplicate",
                                                      "unknown-note", "unit-mismatch", "unknown-column"};
    return keys.at(static_cast<std::size_t>(doubt));
}

} // namespace hammerline
