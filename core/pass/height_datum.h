// What a key height is counted from: the piano's own line, the key bed or the key slip (computation 15, situation 19).
#pragma once

#include "core/pass/pass.h"

namespace hammerline {

/// The datum that a height of this size can have. The three lie apart: within 8 mm of a line, 8 to 40 mm over the key
/// slip (a natural stands 20 to 22 mm over it, situation 19), 40 to 100 mm over the key bed (bench-practice 2.3);
/// empty beyond. One datum is never turned into another: the slip's own height over the bed would be needed.
std::string_view datumOf(std::int64_t height);

/// A height that cannot be one over the datum of its pass (two books were merged that differed): it says nothing.
bool isOverAnotherDatum(Cell, const Reading&, std::string_view datum);

/// Whether some natural or sharp of the pass has a height in numbers.
bool hasHeights(const Pass&);

} // namespace hammerline
