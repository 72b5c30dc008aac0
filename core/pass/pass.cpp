#include "core/pass/pass.h"

#include <algorithm>

namespace hammerline {

std::optional<std::int64_t> Measured::value() const {
    // Exact in integers: the mean of the trials, half away from zero. Words and inequalities have no number.
    std::int64_t sum = 0;
    std::int64_t n = 0;
    for (const Reading& r : trials) {
        if (r.word || r.relation != Relation::equal) continue;
        sum += r.count;
        ++n;
    }
    if (n == 0) return std::nullopt;
    const std::int64_t half = n / 2;
    return sum >= 0 ? (sum + half) / n : -((-sum + half) / n);
}

std::optional<WordId> Measured::word() const {
    // A later trial speaks last: a number after a word means the word no longer holds.
    if (trials.empty()) return std::nullopt;
    return trials.back().word;
}

const Measured* Pass::at(Cell cell) const {
    const auto found = cells.find(cell);
    return found == cells.end() ? nullptr : &found->second;
}

std::optional<std::int64_t> Pass::value(Cell cell) const {
    const Measured* measured = at(cell);
    return measured && !measured->notFitted ? measured->value() : std::nullopt;
}

std::string_view Pass::referenceOf(DimensionId id) const {
    const auto found = references.find(id);
    if (found != references.end()) return found->second;
    const auto known = row(id).references;
    return known.empty() ? std::string_view{} : known.front();
}

std::size_t Pass::readingCount() const {
    std::size_t n = 0;
    for (const auto& [cell, measured] : cells)
        n += measured.trials.size();
    return n;
}

std::string_view otherMethod(DimensionId id, const Pass& from, const Pass& to) {
    using namespace dimension;
    const auto oneOf = [&](auto... list) { return ((id == list) || ...); };
    if (from.referenceOf(id) != to.referenceOf(id)) return "reference";
    // Fingers of a stack may hold the wippens; weights on the keys stand for the action's.
    if (from.stackIn != to.stackIn && oneOf(lostMotion, blow, aftertouch, downWeight, upWeight)) return "stack";
    if (from.weightsOn != to.weightsOn && oneOf(keyHeight, sharpHeight, keyDip)) return "weights";
    if (from.onBench != to.onBench && row(id).at == MeasuredAt::hammer) return "bench";
    return {};
}

std::vector<DimensionId> askedDimensions(const Pass& pass) {
    std::array<bool, 256> asked{};
    for (const auto& [cell, measured] : pass.cells)
        if (!measured.missing()) asked[cell.dimension.row] = true;
    std::vector<DimensionId> out;
    for (const Dimension& d : dimensions())
        if (asked[d.id.row]) out.push_back(d.id);
    return out;
}

} // namespace hammerline
