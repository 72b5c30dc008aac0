// Key heights of a file: measured from the key bed, or against a line; sharps among naturals (computation 2).
#pragma once

#include "core/intake/cell.h"

namespace hammerline {

/// The dimension that a height column means at this note: a height from the bed is a key-height on naturals and sharps
/// alike; a small number at a sharp is its height over the naturals.
DimensionId heightAsMeant(std::string_view typed, NoteNumber, DimensionId ofColumn, const CellContext&);

/// Asks about heights of the rarer datum where a file mixes both, and about sharps that do not stand 10 to 14 mm above
/// their neighbouring naturals (bench-practice 2.3).
void askAboutHeights(Intake&, const Piano&);

} // namespace hammerline
