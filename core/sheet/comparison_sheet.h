// Two passes side by side as plain data: per dimension what was and what is, with the state it is in.
#pragma once

#include "core/sheet/pass_view.h"

namespace hammerline {

enum class DimensionState : std::uint8_t { even, good, notYet, notComparable };

struct ComparisonLine {
    DimensionId dimension{};
    std::optional<DimensionComparison> compared;   // empty where the two passes cannot be compared
    std::string_view notComparable;                // id of the reason
    std::optional<double> medianBefore, medianNow; // trade units
    DimensionState state = DimensionState::notYet;
    int outNow = 0;
    std::vector<NoteNumber> stopped; // notes with a word that stops them (blocks, no let-off)
};

struct ComparisonSheet {
    std::vector<ComparisonLine> lines;
    int notesOutBefore = 0, notesOutNow = 0; // of what both passes read
};

/// `before` and `now` are the views of the two passes of the comparison; all must outlive the sheet.
ComparisonSheet comparisonSheet(const PianoRecord&, const PassView& before, const PassView& now, const Comparison&);

/// Notes of a review with at least one reading outside.
int notesOut(const Review&);
/// Those with a reading outside that the other review has a reading of too: a pass of three trial notes
/// beside one of 88 would else look like a piano that got worse.
int notesOut(const Review&, const Review& other);

/// Median of a dimension's plain readings in one pass, trade units; none where nothing was read.
std::optional<double> medianOf(const Pass&, DimensionId);

} // namespace hammerline
