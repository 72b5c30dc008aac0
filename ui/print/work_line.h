// One line of work on paper: the note, what it reads, which way and the aim in the largest type, the amount small.
#pragma once

#include "ui/print/documents.h"

namespace hammerline::print {

/// Left edges in a column, mm.
inline constexpr double kNowRight = 40, kTurn = 44.4, kDirectionLeft = 47.6;
inline constexpr Type kDirection{15, true};

/// Where direction, aim and amount stand. Two columns are read fastest; long directions and amounts take the whole
/// page.
struct LineEdges {
    int columns = 2;
    double aimRight = 76.5, amountLeft = 78, end = 89;
};
/// The directions are the largest type of the sheet: two columns only where they and the amounts have their room.
LineEdges edgesFor(const AdjustmentWork&, const Piano&);
QString nowText(const AdjustmentLine&);
/// "as 3.5": what the plan starts from, where that is not the reading.
QString takenText(const AdjustmentLine&);
/// What stands small beside the aim: a hand's words, paper, or why.
QString amountText(const AdjustmentLine&);
Paint columnHeads(const AdjustmentWork&, const Piano&, const LineEdges&);
Paint workLine(const AdjustmentLine&, const Piano&, const LineEdges&);

} // namespace hammerline::print
