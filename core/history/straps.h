// Straps that are too tight: with the soft pedal down the key winks, and lost motion read at such a note means nothing
// (situation C6: taut at half blow, and no key winks).
#pragma once

#include "core/history/record.h"

namespace hammerline {

/// By note (index note - 1): whether the strap was said to be too tight when this pass was read, or after it, and not
/// eased in between. It is said by the word `tight`, the finding `bridle-wire too-tight`, or the symptom
/// soft-pedal-keys-wink; it is eased by the word `ok` or `slack`, a wire that is sound or mended, or a bend of it.
std::vector<bool> tightStraps(const PianoRecord&, const Pass&);

} // namespace hammerline
