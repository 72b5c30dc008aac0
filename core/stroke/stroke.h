// The stroke of one note on the axis of its key: what happens after how many mm of key travel.
#pragma once

#include "core/stroke/account.h"

namespace hammerline {

/// Places on the key's way, mm at its front from rest; absent where the readings do not say.
struct Stroke {
    NoteNumber note{};
    std::optional<double> moves;        // M: the hammer begins to move
    std::optional<double> damperStirs;  // M + S/R, S the damper start, mm at the hammer
    std::optional<double> letOff;       // M + (B - O)/R
    std::optional<double> bottom;       // D
    std::optional<double> aftertouch;   // D - let-off, negative where the jack does not escape
    std::optional<double> dropAtHammer; // mm of the hammer, a grand's: it has no way of the key
    bool jackEscapes() const { return aftertouch && *aftertouch >= 0; }
};

/// From the same readings and the same ratio as the account: letOff = D - A of it.
Stroke strokeOf(const Piano&, const PassTable&, const Ratio&, NoteNumber);

/// Where the zones lie on the key's way, mm from rest. Those of damper and let-off are counted from the aims of lost
/// motion and blow: what is right for this note, whatever was read. An open side is absent.
struct StrokeBand {
    std::optional<double> low, high;
    double aim = 0;
};
struct StrokeZones {
    std::optional<StrokeBand> moves, damperStirs, letOff, bottom, aftertouch;
};
/// A reckoned distance, mm, judged as a reading of that cell would be.
Judged judgedDistance(Cell, double mm, const std::optional<Zone>&);
StrokeZones strokeZones(const Piano&, const Zones&, const Ratio&, NoteNumber);

} // namespace hammerline
