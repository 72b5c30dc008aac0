#include "core/plan/doubts.h"

#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hammerline {

namespace {

constexpr double kEighth = 1.0 / 8;
constexpr double kSeenOnRail = 0.01;  // that a hammer seen on its rail hangs by more than an eighth of the zone
constexpr double kMedianOfSix = 1.25; // variance of a note less its neighbours' median, in variances of one
constexpr std::size_t kBeside = 3, kFewestBeside = 3;

/// The zone widened by an eighth of its width on each side; a one-sided one by an eighth of twice its side.
Goal plainLimits(const Bench& bench, Cell cell) {
    const Goal zone = zoneOf(*bench.zones.at(cell), cell.dimension);
    double width = zone.high - zone.low;
    if (std::isinf(width)) width = 2 * std::min(zone.nominal - zone.low, zone.high - zone.nominal);
    const double by = std::isinf(width) ? 0 : width * kEighth;
    return {zone.low - by, zone.nominal, zone.high + by};
}

} // namespace

Doubts::Doubts(const Bench& bench) : m_cells(static_cast<std::size_t>(bench.piano().notes) * kDimensionCount) {
    for (const Dimension& dimension : dimensions()) {
        if (dimension.wordsOnly) continue;
        for (int n = 1; n <= bench.piano().notes; ++n)
            judgeOutside(bench, {{n}, dimension.id});
        judgeEvenness(bench, dimension.id);
    }
}

void Doubts::judgeOutside(const Bench& bench, Cell cell) {
    const Known& known = bench.state(cell.note).of(cell.dimension);
    if (!known.known || known.derived || !bench.zones.at(cell) || !fitted(cell.dimension, cell.note, bench.piano()))
        return;
    CellDoubt& doubt = m_cells[place(cell)];
    doubt.counts = true;
    doubt.readings = known.readings;
    const OwnReadings own = ownReadings(bench, cell);
    doubt.reads = own.outside;
    Goal plain = plainLimits(bench, cell);
    const bool onRail = seenOnRail(bench, cell);
    if (onRail) plain.low = -std::numeric_limits<double>::infinity();
    doubt.plainly = outside(bench.shown(cell), known.variance, plain);
    if (own.outside) {
        const double u = bench.u(cell.dimension);
        doubt.plainly = std::max(doubt.plainly, outside(own.mean, u * u / std::max(known.readings, 1), plain));
    }
    if (onRail) doubt.plainly = std::min(doubt.plainly + kSeenOnRail, 1.0);
}

void Doubts::judgeEvenness(const Bench& bench, DimensionId id) {
    const auto limit = bench.zones.step(id);
    if (!limit) return;
    const double L = toTrade(*limit, row(id).kind);
    const bool apart = id == dimension::keyHeight || id == dimension::keyDip;
    struct Point {
        NoteNumber note;
        double off, variance;
    };
    std::vector<Point> line;
    const auto judge = [&] {
        for (std::size_t i = 0; i < line.size(); ++i) {
            std::vector<double> beside;
            for (std::size_t j = i > kBeside ? i - kBeside : 0; j < std::min(line.size(), i + kBeside + 1); ++j)
                if (j != i) beside.push_back(line[j].off);
            if (beside.size() < kFewestBeside) continue;
            const double e = line[i].off - *median(beside), variance = kMedianOfSix * line[i].variance;
            CellDoubt& doubt = m_cells[place({line[i].note, id})];
            doubt.uneven = outside(e, variance, {-2 * L, 0, 2 * L});
            doubt.odd = outside(e, variance, {-3 * L, 0, 3 * L});
        }
        line.clear();
    };
    for (const Section& section : sectionsOf(bench.piano()))
        for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp}) {
            if (!apart && colour == KeyColour::sharp) break;
            for (int n = section.range.first; n <= section.range.last; ++n) {
                const Cell cell{{n}, id};
                if (!at(cell).counts || bench.zones.overridden(cell) || (apart && bench.colour({n}) != colour))
                    continue;
                line.push_back({{n},
                                bench.shown(cell) - zoneOf(*bench.zones.at(cell), id).nominal,
                                bench.state({n}).of(id).variance});
            }
            judge();
        }
}

} // namespace hammerline
