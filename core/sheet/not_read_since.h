// What an earlier pass found out and no later pass has read again: a pass that reads one dimension says nothing of the
// others, and "nothing is out" would be more than was measured.
#pragma once

#include "core/sheet/pass_view.h"

namespace hammerline {

struct NotReadSince {
    int pass = 0; // that read it last
    Judged judged;
};

/// Readings outside their zones in the pass that read their cell last, of passes before the last of `views` (which is
/// the pass shown); the views stand in the order of the passes, null where one cannot be had. By dimension, then note.
std::vector<NotReadSince> notReadSince(std::span<const PassView* const> views);

} // namespace hammerline
