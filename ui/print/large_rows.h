// The adjustment list for bad light and from arm's length: one column, a note's number 28 points, direction and aim 32.
#pragma once

#include "ui/print/documents.h"

namespace hammerline::print {

inline constexpr double kLargeText = 12.5; // points, of the sentences above the lines
/// A work of more lines than these begins a page of its own.
inline constexpr std::size_t kFewLargeLines = 4;

/// The work that a page is of.
Solid largeHeading(const QString& text, const QString& right);
/// The lines of a work without those of its trial; every fifth closes with a heavier line, and in the margin the
/// section has its mark at a height of its own, to be found by leafing.
Table largeTable(const AdjustmentWork&, const Piano&);
/// The lines of its trial, with room to write what it then shows.
Table largeTrialTable(const AdjustmentWork&, const Piano&);

} // namespace hammerline::print
