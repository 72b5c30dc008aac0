// What the Adjust station lists: the order of work under its access, and the lines of one work.
#pragma once

#include "core/sheet/adjustment_sheet.h"
#include "ui/stations/station_words.h"

#include <set>

namespace hammerline {

/// Works of the sheet with their number as key; `done` holds the ids of steps that are ticked.
std::vector<ListRow> orderRows(const AdjustmentSheet&, const std::set<std::string>& done, const Piano&);
/// Lines and moves of a work; keys count lines first, then moves.
std::vector<ListRow> workRows(const AdjustmentWork&, const Piano&, const std::map<std::string, QString>& done);
const AdjustmentWork* workOf(const AdjustmentSheet&, int number);
/// The step of a row's key.
const Step* stepOf(const AdjustmentWork&, int key);

} // namespace hammerline
