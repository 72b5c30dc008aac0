// The parts to order as a table of text: no prices, no maker.
#pragma once

#include "core/history/record.h"

#include <functional>
#include <string>

namespace hammerline {

/// Words of a line for people; core has none.
struct PartsWords {
    std::vector<std::string> heads; // part, size, needed, spare, order, unit, faulty, of, notes, measured
    std::function<std::string(const PartsLine&)> part, size, measured;
};
/// UTF-8 with BOM, semicolons, CRLF, texts that a spreadsheet would run neutralised. Lengths in mm.
std::string partsCsv(const PianoRecord&, const PartsWords&);

} // namespace hammerline
