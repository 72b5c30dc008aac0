// The steps of the work as rows, and the text of one of them.
#pragma once

#include "core/sheet/work_now.h"
#include "ui/stations/station_words.h"

namespace hammerline {

/// Under the way they are reached; the key of a row is its place in the steps. Steps that nothing asks for are left
/// out, unless `all`.
std::vector<ListRow> workRows(const WorkNow&, const Piano&, bool all);
/// What for, how, which way, good when, mistake, cautions, as rich text.
QString workStepHtml(const StepNow&, const Piano&);

} // namespace hammerline
