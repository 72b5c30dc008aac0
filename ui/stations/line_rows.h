// The lines of one operation of the plan as rows: the trial first, then note by note.
#pragma once

#include "core/sheet/adjustment_sheet.h"
#include "ui/stations/station_words.h"

#include <set>

namespace hammerline {

/// How the lines stand, by the ids of their steps: ticked, with what was said, or stopped by a screw that does not
/// turn.
struct LineStates {
    std::map<std::string, QString> ticked;
    std::set<std::string> stopped;
};
/// Lines and moves of a work; keys count lines first, then moves. Of a work that is tried first its trial stands at the
/// top.
std::vector<ListRow> lineRows(const AdjustmentWork&, const Piano&, const LineStates&);
/// Whether the line is one of the notes that are tried first, with the same amount each.
bool isTrial(const AdjustmentLine&, const AdjustmentWork&);
/// The step of a row's key.
const Step* stepOf(const AdjustmentWork&, int key);

} // namespace hammerline
