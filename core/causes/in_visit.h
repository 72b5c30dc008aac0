// What was found in this visit, over its passes: what a cause is judged on.
#pragma once

#include "core/history/record.h"

namespace hammerline {

/// The pass with what earlier passes of the same visit read and nothing moved since: a trial of six notes reads six
/// notes, and what stood behind all of them still stands. Cells that work disturbed and nobody read again are left
/// out, as is what was read in another way (otherMethod) or in other air. Of each cell the newest reading. With
/// relative heights (judge's withRelativeHeights), as is the pass that comes in.
Pass foundInVisit(const PianoRecord&, const Pass&);

} // namespace hammerline
