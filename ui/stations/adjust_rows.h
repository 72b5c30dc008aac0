// What the Adjust station lists: the order of work under its access, and the lines of one work.
#pragma once

#include "core/sheet/adjustment_sheet.h"
#include "ui/stations/station_words.h"

#include <set>

namespace hammerline {

/// Works of the sheet with their number as key; `done` holds the ids of steps that are ticked.
std::vector<ListRow> orderRows(const AdjustmentSheet&, const std::set<std::string>& done);
/// Lines and moves of a work; keys count lines first, then moves.
std::vector<ListRow> workRows(const AdjustmentWork&, const Piano&, const std::map<std::string, QString>& done);
const AdjustmentWork* workOf(const AdjustmentSheet&, int number);
/// The step of a row's key.
const Step* stepOf(const AdjustmentWork&, int key);
/// What is to be mended first, a line each; HTML.
QString mendText(const AdjustmentSheet&);
/// What a turn does, its cap and what stops it.
QString workText(const AdjustmentWork&, const Piano&);
/// Readings out now and after the plan by dimension, conflicts, what is left out, how the piano answers.
QString planText(const Plan&, const PassView&, const PianoRecord&, const AdjustmentSheet&);

} // namespace hammerline
