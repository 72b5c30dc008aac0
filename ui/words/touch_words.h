// What down and up weight say of a note, in words.
#pragma once

#include "core/judge/touch_diagnosis.h"

#include <QString>

namespace hammerline::words {

/// "Friction 32.5 g, mean weight 47.5 g."
QString touchFigures(const NoteTouch&);
/// "Too much friction. Look at the key alone first, ..."; by what is farther out; grands and verticals have each their
/// own.
QString touchSentence(const NoteTouch&, const Piano&);

} // namespace hammerline::words
