// Two passes side by side as rows, and what is said about them.
#pragma once

#include "core/plan/finish_line.h"
#include "ui/widgets/row_table.h"

namespace hammerline {

/// A row a dimension: how many out before and now, what got worse, the spread, what was reached less what was expected.
std::vector<ListRow> comparisonRows(const Comparison&);
/// Whether it is even, what got worse, what this piano answers, the climate; HTML.
QString comparisonText(const Comparison&, const FinishLine&, const Piano&);

} // namespace hammerline
