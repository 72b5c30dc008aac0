#include "core/plan/outlook.h"

#include "core/plan/doubts.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kTwoSided95 = 1.959963984540054; // normal quantile

/// Which cells the steps move or serve, by note.
std::vector<std::bitset<kDimensionCount>> movedBy(const Bench& bench, std::span<const Step> steps) {
    std::vector<std::bitset<kDimensionCount>> moved(static_cast<std::size_t>(bench.piano().notes));
    const auto mark = [&](NoteNumber note, DimensionId id) {
        moved[static_cast<std::size_t>(note.value) - 1].set(id.row);
    };
    for (const Step& step : steps)
        for (const NoteNumber note : step.notes) {
            for (const Dimension& dimension : dimensions())
                if (disturbs(step.operation, dimension.id, bench.piano()) && fitted(dimension.id, note, bench.piano()))
                    mark(note, dimension.id);
            if (bench.colour(note) == KeyColour::natural &&
                disturbs(step.operation, dimension::keyHeight, bench.piano()))
                for (const NoteNumber sharp : neighbouringSharps(note, bench.piano()))
                    mark(sharp, dimension::sharpHeight);
        }
    return moved;
}

Expected expect(const Bench& bench, Cell cell, const Known& known) {
    const double value = bench.shown(cell), half = kTwoSided95 * std::sqrt(known.variance);
    Expected expected{cell, value, value - half, value + half, Verdict::within};
    if (const auto& zone = bench.zones.at(cell)) {
        const Goal limits = zoneOf(*zone, cell.dimension);
        expected.verdict = value < limits.low - 1e-9    ? Verdict::low
                           : value > limits.high + 1e-9 ? Verdict::high
                                                        : Verdict::within;
    }
    return expected;
}

// A cell is read when it may be plainly outside or uneven by more than this; where all that was read and nothing is
// left to do, yet the grade is not reached, the limit is halved, down to the least: so reading always serves the
// decision.
constexpr double kWorthReading = 0.05, kLeastWorthReading = 0.00625;

bool worthReading(const CellDoubt& doubt, double limit) {
    // Read so often since it was last moved, a cell is decided: it is worked or left.
    if (doubt.readings >= kReadingsDecide) return false;
    return doubt.reads || doubt.plainly > limit || doubt.uneven > limit;
}

/// Only that the hammer may hang is in doubt: a look at the shank tells that, not a strip.
bool isLook(const Bench& bench, Cell cell, const CellDoubt& doubt, double limit) {
    return toldByEye(bench, cell) && doubt.tooMuch <= limit && doubt.uneven <= limit;
}

std::string_view whyRead(const Bench& bench, const Doubts& doubts, Cell cell, bool moved, double limit) {
    const NoteStanding& standing = bench.stand(cell.note);
    if (standing.blocked) return {};
    const Known& known = bench.state(cell.note).of(cell.dimension);
    const bool wasRead = bench.read(cell);
    if (standing.held[cell.dimension.row] && wasRead) return kHeldBack;
    if (!known.known) return moved && wasRead ? "not-known-any-more" : std::string_view{};
    if (known.derived) return {};
    const auto& zone = bench.zones.at(cell);
    if (!zone) return {};
    if (!worthReading(doubts.at(cell), limit)) return {};
    if (isLook(bench, cell, doubts.at(cell), limit)) return kLookAtRail;
    if (moved) return "moved";
    return known.expected ? "stale" : "doubtful";
}

} // namespace

void lookAhead(const Bench& bench, Plan& plan) {
    const auto moved = movedBy(bench, plan.steps);
    std::vector<bool> touched(moved.size(), false);
    for (const Step& step : plan.steps)
        for (const NoteNumber note : step.notes)
            touched[static_cast<std::size_t>(note.value) - 1] = true;
    std::vector<Cell> trial;
    for (const Step& step : plan.steps)
        if (step.why == "trial" && step.note) trial.push_back({*step.note, step.aimDimension});
    std::sort(trial.begin(), trial.end());
    const Doubts doubts(bench);
    const auto askFor = [&](double limit) {
        for (int n = 1; n <= bench.piano().notes; ++n)
            for (const Dimension& dimension : dimensions()) {
                const Cell cell{{n}, dimension.id};
                if (!fitted(dimension.id, {n}, bench.piano())) continue;
                const bool here = moved[static_cast<std::size_t>(n) - 1][dimension.id.row];
                if (std::binary_search(trial.begin(), trial.end(), cell))
                    plan.readNext.push_back({cell, "trial"});
                else if (const auto why = whyRead(bench, doubts, cell, here, limit); !why.empty())
                    plan.readNext.push_back({cell, why});
            }
    };
    askFor(kWorthReading);
    const bool reached = plan.finish && plan.finish->grade == Grade::even;
    if (plan.steps.empty() && !reached)
        for (double limit = kWorthReading / 2; plan.readNext.empty() && limit >= kLeastWorthReading; limit /= 2)
            askFor(limit);
    for (int n = 1; n <= bench.piano().notes; ++n) {
        const auto i = static_cast<std::size_t>(n) - 1;
        for (const Dimension& dimension : dimensions()) {
            const Cell cell{{n}, dimension.id};
            if (!fitted(dimension.id, {n}, bench.piano())) continue;
            const bool here = moved[i][dimension.id.row];
            const Known& known = bench.state({n}).of(dimension.id);
            if ((touched[i] || here) && known.known) plan.expected.push_back(expect(bench, cell, known));
            if (here && bench.read(cell)) plan.becomesStale.push_back(cell);
        }
    }
}

} // namespace hammerline
