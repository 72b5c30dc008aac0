// What stands in the picture of an account of the dip.
#pragma once

#include "ui/words/action.h"

namespace hammerline::words {

struct AccountRow {
    QString name, read, means;
};
AccountRow accountRow(const DipTerm&, const Ratio&);
AccountRow accountLastRow(const DipAccount&);
/// "−0.24": what the line will be after the plan.
QString shareAfter(const DipTerm&);
/// "1.20 after the plan · zone 0.7 to 1.6, set to 1.1"
QString leftAfter(const NoteAction&);
/// 0 gives, 1 takes, 2 after the plan, 3 read at the note itself.
QString accountLegend(int entry);
QString wholeMm(int mm);

} // namespace hammerline::words
