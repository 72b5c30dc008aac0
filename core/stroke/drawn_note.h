// One note placed to scale: the linkage of its kind, set so that the distances that were read come out. What was not
// read stands at its aim and is named, so that a drawing can say so.
#pragma once

#include "core/kinematics/linkage.h"
#include "core/stroke/stroke.h"

#include <span>

namespace hammerline {

struct DrawnNote {
    kinematics::Linkage linkage;
    std::vector<DimensionId> atAim; // not read: drawn at the aim
    bool damperStirs = false;       // the damper start is known, its place may be shown
    bool checks = false;            // checking likewise
};

/// Why the note cannot be drawn, and the readings that do not go together.
struct NotDrawn {
    kinematics::CannotDraw why{};
    std::vector<DimensionId> readings;
};

/// Refuses where neither a reading nor an aim tells dip, blow or let-off, and distances that no action of this build
/// can have together.
tl::expected<DrawnNote, NotDrawn> drawnNote(const Piano&, const PassTable&, const Zones&, const Ratio&, NoteNumber);

} // namespace hammerline
