// What became of the cells of a file, shared by its two forms.
#pragma once

#include "core/intake/intake.h"

namespace hammerline {

/// The kind of the import JSON under which a refusal of a cell is listed.
Doubt doubtOf(RefusalCode);

/// Same reading, however it was typed.
bool sameReading(const Reading&, const Reading&);

/// The reading as a question, to be taken on purpose or left.
Question asQuestion(const Sound&, int column, Doubt, std::string_view slip);

/// By line, then column.
void sortByPlace(Intake&);

} // namespace hammerline
