// What the Adjust station lists: the order of work under its access, and the lines of one work.
#pragma once

#include "core/sheet/adjustment_sheet.h"
#include "ui/stations/station_words.h"

#include <set>

namespace hammerline {

/// Works of the sheet with their number as key; `done` holds the ids of steps that are ticked.
std::vector<ListRow> orderRows(const AdjustmentSheet&, const std::set<std::string>& done, const Piano&);
/// How the lines stand, by the ids of their steps: ticked, with what was said, or stopped by a screw that does not
/// turn.
struct LineStates {
    std::map<std::string, QString> ticked;
    std::set<std::string> stopped;
};
/// Lines and moves of a work; keys count lines first, then moves. Of a work that is tried first its trial stands at the
/// top.
std::vector<ListRow> workRows(const AdjustmentWork&, const Piano&, const LineStates&);
/// Whether the line is one of the notes that are tried first, with the same amount each.
bool isTrial(const AdjustmentLine&, const AdjustmentWork&);
const AdjustmentWork* workOf(const AdjustmentSheet&, int number);
/// The step of a row's key.
const Step* stepOf(const AdjustmentWork&, int key);

} // namespace hammerline
