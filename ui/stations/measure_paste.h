// Pasted text without a head: numbers and words alone, which lie where they are put down.
#pragma once

#include "ui/workbench.h"

namespace hammerline {

/// Cells of a bare block (no header, no notes), laid down from a cell as one would type them.
Intake layDown(const Workbench&, const QString& block, Cell from, const std::vector<DimensionId>& columns);
/// True where the text is such a block: numbers and words only.
bool isBareBlock(const QString& text);

} // namespace hammerline
