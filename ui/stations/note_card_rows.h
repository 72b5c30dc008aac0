// What the note card says of one note: its readings as rows, and what explains them as text.
#pragma once

#include "ui/widgets/row_table.h"
#include "ui/workbench.h"

namespace hammerline {

/// A row a dimension of the note: reading, rule, plate; the key of a row is the dimension's.
std::vector<ListRow> noteCardRows(const Workbench&, NoteNumber);
/// What the other readings lead one to expect of the dip, with the sum spelt out; what is guessed is in italic.
QString noteCardRelation(const Workbench&, NoteNumber);
/// Friction and mean weight of this note, and what they say; empty where it was not weighed both ways.
QString noteCardTouch(const Workbench&, NoteNumber);
/// The current dimension at this note: passes, expected after the plan, zone, neighbours, earlier values of this pass.
QString noteCardHistory(const Workbench&, Cell);
/// What the survey found at the note, and what has to be mended before.
QString noteCardFindings(const Workbench&, NoteNumber);
/// What its screws, papers and felt still allow, and what is new at it and settles.
QString noteCardLeft(const Workbench&, NoteNumber);
/// "66 of 88 notes, 17 out so far, about 40 min left".
QString noteCardProgress(const Workbench&);

} // namespace hammerline
