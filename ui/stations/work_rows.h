// The steps of the work as rows, and the text of one of them.
#pragma once

#include "core/sheet/work_now.h"
#include "ui/stations/station_words.h"

namespace hammerline {

/// Under the way they are reached; the key of a row is its place in the steps. Steps that nothing asks for are left
/// out, unless `all`.
std::vector<ListRow> stepRows(const WorkNow&, const Piano&, bool all);
/// "13 of 34 done".
QString doneOfAll(const WorkNow&, bool all);
/// What for, how, which way, good when, mistake, cautions, what it opens and makes old, as rich text; in two columns
/// where there is room.
QString workStepHtml(const StepNow&, const Piano&, bool twoColumns);
/// Its cautions alone.
QString cautionHtml(const StepOfWork&, const Piano&);

} // namespace hammerline
