// Key heights of a file: measured from the key bed, or against a line; sharps among naturals (computation 2).
#pragma once

#include "core/intake/cell.h"

namespace hammerline {

/// The dimension that a height column means at this note: a height from the bed is a key-height on naturals and sharps
/// alike; a small number at a sharp is its height over the naturals.
DimensionId heightAsMeant(std::string_view typed, NoteNumber, DimensionId ofColumn, const CellContext&);

/// Asks about heights of the rarer datum where a file mixes them (over the bed, the slip, a line), or of every other
/// datum than the one that holds (`TableOptions::datumHolds`); none of these can be taken. Says the file's datum where
/// it is not the line, or the pass said another. And about sharps that do not stand 10 to 14 mm above
/// their neighbouring naturals (bench-practice 2.3).
void askAboutHeights(Intake&, const Piano&, const TableOptions&);

} // namespace hammerline
