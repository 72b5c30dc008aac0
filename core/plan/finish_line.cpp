#include "core/plan/finish_line.h"

#include "core/plan/doubts.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kOneSided95 = 1.6449; // normal quantile
constexpr double kGoodShare = 0.08, kEvenShare = 0.015, kMoreThanNot = 0.5;

/// A share of few cells is less than one of them: half a cell may be outside there, so that five sound readings are not
/// one too many for what a gauge leaves open.
bool tooManyOf(const ExpectedCount& count, double share) {
    return count.atMost() > std::max(share * count.cells, 0.5);
}

} // namespace

void ExpectedCount::add(double probability) {
    ++cells;
    outside += probability;
    variance += probability * (1 - probability);
}

double ExpectedCount::atMost() const {
    return outside + kOneSided95 * std::sqrt(variance);
}

namespace {

bool stopsNote(const Bench& bench) {
    return std::any_of(bench.pass().cells.begin(), bench.pass().cells.end(), [](const auto& each) {
        const auto word = each.second.missing() ? std::nullopt : each.second.word();
        return word && row(*word).stopsNote;
    });
}

/// Whether a dimension that was read somewhere is known of every note that has it.
bool knownOfAll(const Bench& bench, const Doubts& doubts, DimensionId id) {
    for (int n = 1; n <= bench.piano().notes; ++n) {
        const Cell cell{{n}, id};
        if (fitted(id, {n}, bench.piano()) && bench.zones.at(cell) && !doubts.at(cell).counts) return false;
    }
    return true;
}

} // namespace

FinishLine finishLine(const Bench& bench, const Doubts& doubts) {
    FinishLine line;
    for (const Dimension& dimension : dimensions())
        for (int n = 1; n <= bench.piano().notes; ++n) {
            const Cell cell{{n}, dimension.id};
            const CellDoubt& doubt = doubts.at(cell);
            if (!doubt.counts) continue;
            line.all.add(doubt.plainly);
            line.byDimension[dimension.id].add(doubt.plainly);
            if (doubt.uneven > kMoreThanNot) line.uneven.push_back(cell);
            if (doubt.odd > kMoreThanNot) line.odd.push_back(cell);
        }
    auto& missing = line.missing;
    if (line.all.cells == 0) missing.emplace_back("nothing-read");
    if (stopsNote(bench) || !bench.blocked.empty()) missing.emplace_back("note-stopped");
    const auto tooMany = [](const auto& each) { return tooManyOf(each.second, kGoodShare); };
    if (std::any_of(line.byDimension.begin(), line.byDimension.end(), tooMany))
        missing.emplace_back("too-many-outside");
    if (!line.odd.empty()) missing.emplace_back("notes-uneven");
    if (!knownOfAll(bench, doubts, dimension::letOff)) missing.emplace_back("let-off-not-known");
    if (doubleStrikeReported(bench.record, bench.pass().number)) missing.emplace_back("double-strike-reported");
    if (!missing.empty()) return line;

    line.grade = Grade::goodForThisPiano;
    if (tooManyOf(line.all, kEvenShare)) missing.emplace_back("notes-outside");
    if (!line.uneven.empty()) missing.emplace_back("notes-uneven");
    const bool measuredRatio = !bench.ratio[0].fromDefault();
    for (const auto& [id, count] : line.byDimension) {
        const bool computed = id == dimension::aftertouch && measuredRatio;
        if (row(id).where != ReadWhere::everyNote || computed || knownOfAll(bench, doubts, id)) continue;
        missing.emplace_back("notes-not-read");
        break;
    }
    if (missing.empty()) line.grade = Grade::even;
    return line;
}

} // namespace hammerline
