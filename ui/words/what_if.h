// What supposing a distance says.
#pragma once

#include "core/sheet/note_action.h"

#include <QString>

namespace hammerline::words {

/// "read 5.1", "supposed, read 5.1"
QString whatIfRemark(const std::optional<double>& read, const std::optional<double>& supposed);
QString whatIfValue(DimensionId, double mm);
/// "1.30 left, within"
QString outcomeText(const NoteAction&);
/// "before 0.55; let-off of the jack at 8.95 of 10.2"
QString outcomeRemark(const NoteAction&);
/// "+0.50", a real minus.
QString railValue(double mm);
/// "within at 60 notes, as read at 47"
QString railOutcome(std::pair<int, int> within);
/// What pads alone do, and what the capstans' round does to it.
QString railRemark(bool capstansFollow);
QString railSentence(double mm, bool capstansFollow, std::pair<int, int> within);
QString whatIfSentence(DimensionId, const std::optional<double>& value, const NoteAction&, bool supposed);

} // namespace hammerline::words
