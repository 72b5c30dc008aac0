// One row a note, one column a dimension: the table of a spreadsheet.
#pragma once

#include "core/intake/intake.h"

namespace hammerline {

Outcome<Intake> readWideForm(const Table&, const Piano&, const TableOptions&);

} // namespace hammerline
