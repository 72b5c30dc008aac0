// The rows of work on the adjustment list: a note's line, a trial's line, a common move with its boxes.
#pragma once

#include "ui/print/documents.h"

namespace hammerline::print {

/// "1/8 turn", "0.2 mm".
QString trialAmount(const AdjustmentWork&, const Piano&);
QString accessRemark(Access, const Piano&);
/// A paragraph with a box to tick before it.
Solid tickedParagraph(const Paragraph&, double width);
Solid moveBlock(const SheetMove&, const Piano&, double width);
Table trialTable(const AdjustmentWork&, const Piano&);
/// The lines of a work without those of its trial.
Table workTable(const AdjustmentWork&, const Piano&);

} // namespace hammerline::print
