// Rows of a book that cannot be true: at notes that the piano does not have, from a note to one before it, amounts that
// no action has. A damaged disk or another program leaves such; everything after the loading may rely on there being
// none.
#pragma once

#include "core/history/record.h"

namespace hammerline {

/// Takes out of the record what cannot be true, and says so in `record.leftOut`: every kind of row is looked at here
/// and nowhere else. Bounds: notes 1 to those of the piano (0 or none: the piano as a whole); lengths within 10^12 nm,
/// masses within 10^12 mg; places and times from 0 to 2^61.
void leaveOutUnfit(PianoRecord& record);

} // namespace hammerline
