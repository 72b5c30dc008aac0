#include "core/sheet/comparison_sheet.h"

#include <algorithm>
#include <set>

namespace hammerline {

namespace {

/// Good for this piano, of one dimension: nothing blocks, at most one in twenty of the fitted notes outside, no step
/// beyond the limit (bench-practice, rules). Even: all within, none uneven.
DimensionState stateOf(const Review& review, DimensionId dimension, const std::vector<NoteNumber>& stopped) {
    const auto found = review.byDimension.find(dimension);
    if (found == review.byDimension.end()) return DimensionState::notYet;
    const Summary& s = found->second;
    bool stepped = false;
    for (const Judged& judged : review.ranked)
        stepped = stepped || (judged.cell.dimension == dimension && judged.step);
    if (s.missing == 0 && s.within == s.fitted && s.uneven == 0 && !stepped) return DimensionState::even;
    const bool few = s.outside() * 20 <= s.fitted;
    return stopped.empty() && few && !stepped ? DimensionState::good : DimensionState::notYet;
}

std::vector<NoteNumber> stoppedNotes(const Review& review, DimensionId dimension) {
    std::vector<NoteNumber> notes;
    for (const Judged& judged : review.ranked)
        if (judged.cell.dimension == dimension && judged.word && row(*judged.word).stopsNote)
            notes.push_back(judged.cell.note);
    std::ranges::sort(notes);
    return notes;
}

} // namespace

int notesOut(const Review& review, const Review& other) {
    std::set<NoteNumber> notes;
    for (const Judged& judged : review.ranked)
        if ((judged.verdict == Verdict::low || judged.verdict == Verdict::high) && other.at(judged.cell))
            notes.insert(judged.cell.note);
    return static_cast<int>(notes.size());
}

int notesOut(const Review& review) {
    return notesOut(review, review);
}

std::optional<double> medianOf(const Pass& pass, DimensionId dimension) {
    std::vector<double> values;
    for (const auto& [cell, measured] : pass.cells)
        if (cell.dimension == dimension)
            if (const auto value = measured.value()) values.push_back(toTrade(*value, row(dimension).kind));
    if (values.empty()) return std::nullopt;
    std::ranges::sort(values);
    const std::size_t middle = values.size() / 2;
    return values.size() % 2 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
}

ComparisonSheet comparisonSheet(const PianoRecord&, const PassView& before, const PassView& now,
                                const Comparison& comparison) {
    ComparisonSheet sheet;
    sheet.notesOutBefore = notesOut(before.review, now.review);
    sheet.notesOutNow = notesOut(now.review, before.review);
    for (const Dimension& dimension : dimensions()) {
        ComparisonLine line;
        line.dimension = dimension.id;
        const auto compared = std::ranges::find(comparison.dimensions, dimension.id, &DimensionComparison::dimension);
        if (compared != comparison.dimensions.end()) line.compared = *compared;
        for (const auto& [id, reason] : comparison.notComparable)
            if (id == dimension.id) line.notComparable = reason;
        if (!line.compared && line.notComparable.empty()) continue;
        line.medianBefore = medianOf(before.pass, dimension.id);
        line.medianNow = medianOf(now.pass, dimension.id);
        line.stopped = stoppedNotes(now.review, dimension.id);
        if (const auto summary = now.review.byDimension.find(dimension.id); summary != now.review.byDimension.end())
            line.outNow = summary->second.outside();
        line.state = line.notComparable.empty() ? stateOf(now.review, dimension.id, line.stopped)
                                                : DimensionState::notComparable;
        sheet.lines.push_back(std::move(line));
    }
    return sheet;
}

} // namespace hammerline
