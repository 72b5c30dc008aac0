// How a note stands among its neighbours, whatever the zone says (computation 4).
#pragma once

#include "core/judge/pass_table.h"
#include "core/spec/spec.h"

namespace hammerline {

/// Of one cell. `residual` in the dimension's trade unit: the value less the median of its neighbours, less the median
/// of all such residuals of the section.
struct Unevenness {
    double residual{};
    std::optional<double> z; // modified z-score of the residual within the section
    bool uneven = false;
    bool step = false;
};

/// Cells with a plain number, by dimension and section (naturals and sharps apart for key height and dip).
///
/// Neighbours: the nearest three readings on each side within the section, at least three in all, *without* the note
/// itself: a window that shrinks at the ends would make end notes unflaggable, and the note among its own neighbours
/// would make most residuals 0. Uneven when |e| exceeds both the limit of the sheet and 2 u, and z > 3.5 or |e| > 4 u.
/// Step: |x[n] - x[n-1]| between adjacent notes, counted from their nominals so that a tapering or changing aim is no
/// step, beyond the sheet's limit and beyond 2 sqrt(2) u, which is what two readings of equal notes may differ by; of
/// the two it marks the one that stands farther from its neighbours. An overridden note is neither judged nor a
/// neighbour.
class Evenness {
public:
    Evenness(const Piano&, const PassTable&, const Zones&, std::span<const DimensionId> asked);
    /// Null where there is no number or there are too few neighbours.
    const Unevenness* at(Cell) const;

private:
    struct Point {
        NoteNumber note;
        double value{};   // trade unit
        double nominal{}; // of its zone; 0 where the sheet has none
    };
    void judgeSection(DimensionId, std::span<const Point>, double u, double limit);
    void markSteps(DimensionId, std::span<const Point>, double u, double limit, const Piano&, bool byColour);
    std::optional<Unevenness>& slot(Cell);

    int m_notes;
    std::vector<std::optional<Unevenness>> m_cells; // [dimension * notes + note - 1]
};

} // namespace hammerline
