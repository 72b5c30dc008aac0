// How a file separates its fields and marks its decimals, found out from its first records.
#pragma once

#include "core/intake/intake.h"

namespace hammerline {

/// A first line "sep=;", which spreadsheets understand: its separator, and the bytes of the line with its break.
struct SeparatorLine {
    char separator{};
    std::size_t length{};
};
std::optional<SeparatorLine> separatorLine(std::string_view text);

/// Tab, semicolon, comma or bar: the one that cuts the first records into most alike pieces; ',' where none cuts.
char findSeparator(std::string_view text);

/// ',' or '.' where a number settles it (46,5 does, 1,250 does not); none where none does or both stand there.
std::optional<char> findDecimal(const std::vector<std::vector<std::string>>& rows);

} // namespace hammerline
