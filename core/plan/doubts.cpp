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
    Goal above = plain;
    above.low = -std::numeric_limits<double>::infinity();
    doubt.tooMuch = outside(bench.shown(cell), known.variance, above);
    if (own.outside) {
        const double u = bench.u(cell.dimension);
        const double ofMean = u * u / std::max(known.readings, 1);
        doubt.plainly = std::max(doubt.plainly, outside(own.mean, ofMean, plain));
        doubt.tooMuch = std::max(doubt.tooMuch, outside(own.mean, ofMean, above));
    }
    if (onRail) doubt.plainly = std::min(doubt.plainly + kSeenOnRail, 1.0);
}

namespace {

struct Point {
    NoteNumber note;
    double off, variance; // from its nominal
};

bool coloursApart(DimensionId id) {
    return id == dimension::keyHeight || id == dimension::keyDip;
}

std::optional<Point> pointAt(const Bench& bench, Cell cell) {
    const Known& known = bench.state(cell.note).of(cell.dimension);
    const bool counts = known.known && !known.derived && fitted(cell.dimension, cell.note, bench.piano());
    if (!counts || !bench.zones.at(cell) || bench.zones.overridden(cell)) return std::nullopt;
    return Point{cell.note, bench.shown(cell) - zoneOf(*bench.zones.at(cell), cell.dimension).nominal, known.variance};
}

/// The cells of one line: a section's, of one colour where those differ.
std::vector<Point> lineOf(const Bench& bench, DimensionId id, NoteRange range, KeyColour colour) {
    std::vector<Point> line;
    for (int n = range.first; n <= range.last; ++n) {
        if (coloursApart(id) && bench.colour({n}) != colour) continue;
        if (const auto point = pointAt(bench, {{n}, id})) line.push_back(*point);
    }
    return line;
}

std::optional<double> medianBeside(std::span<const Point> line, std::size_t i) {
    std::vector<double> beside;
    for (std::size_t j = i > kBeside ? i - kBeside : 0; j < std::min(line.size(), i + kBeside + 1); ++j)
        if (j != i) beside.push_back(line[j].off);
    if (beside.size() < kFewestBeside) return std::nullopt;
    return *median(std::move(beside));
}

} // namespace

void Doubts::judgeEvenness(const Bench& bench, DimensionId id) {
    const auto limit = bench.zones.step(id);
    if (!limit) return;
    const double L = toTrade(*limit, row(id).kind);
    for (const Section& section : sectionsOf(bench.piano()))
        for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp}) {
            if (!coloursApart(id) && colour == KeyColour::sharp) break;
            const std::vector<Point> line = lineOf(bench, id, section.range, colour);
            for (std::size_t i = 0; i < line.size(); ++i) {
                const auto middle = medianBeside(line, i);
                if (!middle) continue;
                const double e = line[i].off - *middle, variance = kMedianOfSix * line[i].variance;
                CellDoubt& doubt = m_cells[place({line[i].note, id})];
                doubt.uneven = outside(e, variance, {-2 * L, 0, 2 * L});
                doubt.odd = outside(e, variance, {-3 * L, 0, 3 * L});
            }
        }
}

std::optional<double> lineBeside(const Bench& bench, Cell cell) {
    const auto& zone = bench.zones.at(cell);
    if (!zone) return std::nullopt;
    const NoteRange range = sectionsOf(bench.piano())[sectionIndexOf(cell.note, bench.piano())].range;
    const std::vector<Point> line = lineOf(bench, cell.dimension, range, bench.colour(cell.note));
    const auto own = std::find_if(line.begin(), line.end(), [&](const Point& p) { return p.note == cell.note; });
    if (own == line.end()) return std::nullopt;
    const auto middle = medianBeside(line, static_cast<std::size_t>(own - line.begin()));
    if (!middle) return std::nullopt;
    return zoneOf(*zone, cell.dimension).nominal + *middle;
}

std::optional<Goal> evenGoal(const Bench& bench, Cell cell) {
    constexpr double kWithin = 0.7;
    const auto limit = bench.zones.step(cell.dimension);
    const auto middle = lineBeside(bench, cell);
    if (!limit || !middle) return std::nullopt;
    const double by = kWithin * toTrade(*limit, row(cell.dimension).kind);
    const Goal zone = zoneOf(*bench.zones.at(cell), cell.dimension);
    // Where the neighbours themselves lie outside, the limit on their side.
    const Goal even{std::clamp(*middle - by, zone.low, zone.high), std::clamp(*middle, zone.low, zone.high),
                    std::clamp(*middle + by, zone.low, zone.high)};
    return even.low < even.high ? std::optional(even) : std::nullopt;
}

} // namespace hammerline
