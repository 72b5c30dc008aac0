// The strokes of all notes side by side, key travel downward: lost motion black from the top, a bar where the damper
// stirs, a box from let-off to bottom. Zones lie under it, step by key colour and section; what is out leaps out by a
// triangle and the ramp's fill. For screen and paper.
#pragma once

#include "core/sheet/note_action.h"
#include "ui/widgets/drawn_style.h"
#include "ui/widgets/note_axis.h"

namespace hammerline {

enum class StrokeKeys : std::uint8_t { all, naturals, sharps };

struct StrokeColumns {
    bool afterPlan = false;
    bool lastOfWay = false; // the last 4 mm only, so much larger
    StrokeKeys keys = StrokeKeys::all;
    std::optional<NoteNumber> current{};
    bool nameWorst = true;
};

/// Places across the page for the notes: a window's axis, or one of a sheet.
struct StrokeAxis {
    std::vector<std::pair<double, double>> columns; // left and right of note 1, 2, ...
    double left = 0, right = 0;                     // of the whole

    static StrokeAxis of(const NoteAxis&);
    /// Equal columns with a gap at each section's break.
    static StrokeAxis across(double left, double right, double gap, const Piano&);
};

void paintStrokeColumns(QPainter&, const QRectF&, const StrokeAxis&, std::span<const NoteAction>, const Piano&,
                        const StrokeColumns&, const DrawnStyle&);

} // namespace hammerline
