// Which pass a new reading belongs to.
#pragma once

#include "core/history/record.h"

namespace hammerline {

/// The number of the pass that a reading taken now joins: the last one, unless work was done after it (a reading after
/// a tick opens the next pass, computation 8) or there is none. Empty: a new pass is to be started.
std::optional<int> passForEntry(const PianoRecord&);

} // namespace hammerline
