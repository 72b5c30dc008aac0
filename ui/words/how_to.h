// How each dimension is measured, in words: from where to where, with what, against which reference, and the slip that
// is made most. The drawing of it is ui/widgets/action_drawing.
#pragma once

#include "core/piano/dimension.h"

#include <QString>

namespace hammerline::words {

struct HowTo {
    QString fromTo;    // the distance that is marked in the drawing
    QString how;       // what the hands do
    QString with;      // tools
    QString reference; // against what; what must be so before
    QString mistake;
    QString beforeAll; // said of all of them
};

HowTo howTo(DimensionId, ActionKind);

} // namespace hammerline::words
