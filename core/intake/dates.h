// Dates that a spreadsheet made from a fraction (situation 64): 3/8 became 8-Mar, 2026-03-08 or 46089.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace hammerline {

/// Whether the text is a date, and what may have been typed in its place ("3/8"; none where nothing fits).
struct DateText {
    bool isDate = false;
    std::vector<std::string> origins;
};

/// Reads 8-Mar, Jan-16, 08. Mrz, 2026-03-08, 03/08/2026, 8.3.26 and the serial days of spreadsheets (five digits).
DateText readDate(std::string_view folded);

} // namespace hammerline
