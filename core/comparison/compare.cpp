// Pass against pass (computation 11).
#include "core/comparison/bench_set_up.h"
#include "core/comparison/comparison.h"
#include "core/stats/capability.h"
#include "core/stats/climate.h"
#include "core/stats/moments.h"
#include "core/stats/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <tuple>

namespace hammerline {
namespace {

constexpr double kGrowth = 0.25; // of a zone's side: by so much an outside reading must have moved to be called worse

/// Both passes of one comparison as they were judged.
struct Sides {
    const PianoRecord& record;
    const Zones& zones;
    Pass from, to;
    Review before, now;
};

bool isOutside(const Judged& judged) {
    return judged.verdict == Verdict::low || judged.verdict == Verdict::high;
}

double sizeOf(const Judged& judged) {
    return judged.infinite ? std::numeric_limits<double>::infinity() : std::abs(judged.deviation.value_or(0));
}

bool gotWorse(const Judged& before, const Judged& now) {
    return isOutside(now) && (!isOutside(before) || sizeOf(now) > sizeOf(before) + kGrowth);
}

bool isNumber(const Judged& judged) {
    return judged.value && !judged.word && judged.relation == Relation::equal;
}

/// One cell read in both passes.
struct Pair {
    Cell cell;
    const Judged* before;
    const Judged* now;
};

std::vector<Pair> pairsOf(DimensionId id, const Sides& sides) {
    std::vector<Pair> out;
    for (int n = 1; n <= sides.record.piano.notes; ++n) {
        const Cell cell{NoteNumber{n}, id};
        const Judged* before = sides.before.at(cell);
        const Judged* now = sides.now.at(cell);
        if (before && now && before->verdict != Verdict::notFitted) out.push_back({cell, before, now});
    }
    return out;
}

struct Columns {
    std::vector<double> before, now;       // plain numbers, trade unit
    std::vector<double> offBefore, offNow; // the same, less the note's aim
};

Columns columnsOf(std::span<const Pair> pairs, const Zones& zones) {
    Columns out;
    for (const Pair& pair : pairs) {
        if (!isNumber(*pair.before) || !isNumber(*pair.now)) continue;
        const Kind kind = row(pair.cell.dimension).kind;
        const auto& zone = zones.at(pair.cell);
        const double aim = zone ? toTrade(zone->nominal, kind) : 0.0;
        out.before.push_back(toTrade(*pair.before->value, kind));
        out.now.push_back(toTrade(*pair.now->value, kind));
        out.offBefore.push_back(out.before.back() - aim);
        out.offNow.push_back(out.now.back() - aim);
    }
    return out;
}

void fill(BeforeAndNow& out, std::span<const Pair> pairs, const Columns& columns) {
    out.n = static_cast<int>(pairs.size());
    for (const Pair& pair : pairs) {
        out.outsideBefore += isOutside(*pair.before);
        out.outsideNow += isOutside(*pair.now);
        out.worseNow += gotWorse(*pair.before, *pair.now);
    }
    std::vector<double> change;
    for (std::size_t i = 0; i < columns.now.size(); ++i)
        change.push_back(columns.now[i] - columns.before[i]);
    out.meanChange = mean(change);
    out.medianChange = median(std::move(change));
    out.spreadBefore = standardDeviation(columns.offBefore);
    out.spreadNow = standardDeviation(columns.offNow);
    out.madBefore = medianAbsoluteDeviation(columns.offBefore);
    out.madNow = medianAbsoluteDeviation(columns.offNow);
}

std::vector<SectionComparison> sectionsIn(std::span<const Pair> pairs, const Sides& sides) {
    std::vector<SectionComparison> out;
    const std::vector<Section> sections = sectionsOf(sides.record.piano);
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const auto inside = [&](const Pair& p) { return sections[i].range.contains(p.cell.note); };
        std::vector<Pair> own;
        std::copy_if(pairs.begin(), pairs.end(), std::back_inserter(own), inside);
        if (own.empty()) continue;
        SectionComparison section;
        section.section = i;
        fill(section, own, columnsOf(own, sides.zones));
        out.push_back(section);
    }
    return out;
}

/// Ppk of every number of the pass now; a zone without one of its sides has no place on the scale there.
std::optional<double> ppkNow(DimensionId id, const Sides& sides) {
    std::vector<double> deviations;
    for (int n = 1; n <= sides.record.piano.notes; ++n) {
        const Judged* judged = sides.now.at({NoteNumber{n}, id});
        if (judged && isNumber(*judged) && judged->deviation && !judged->infinite)
            deviations.push_back(*judged->deviation);
    }
    return performanceIndex(deviations);
}

std::optional<double> largestStepNow(DimensionId id, const Sides& sides) {
    const Piano& piano = sides.record.piano;
    const bool byColour = id == dimension::keyHeight || id == dimension::keyDip || id == dimension::sharpHeight;
    const Kind kind = row(id).kind;
    std::array<std::optional<double>, 2> last; // distance from the aim of the neighbour below, by colour
    std::optional<double> largest;
    for (int n = 1; n <= piano.notes; ++n) {
        const Cell cell{NoteNumber{n}, id};
        const std::size_t colour = byColour ? static_cast<std::size_t>(colourOf(cell.note, piano)) : 0;
        const Judged* judged = sides.now.at(cell);
        if (!judged || !isNumber(*judged) || judged->overridden) {
            last[colour].reset(); // a gap between readings is no step
            continue;
        }
        const auto& zone = sides.zones.at(cell);
        const double off = toTrade(*judged->value - (zone ? zone->nominal : 0), kind);
        if (last[colour]) largest = std::max(largest.value_or(0.0), std::abs(off - *last[colour]));
        last[colour] = off;
    }
    return largest;
}

void addPairedInterval(DimensionComparison& out, const Columns& columns) {
    const auto paired = pairedDifference(columns.before, columns.now);
    if (!paired) return;
    out.low95 = paired->low95;
    out.high95 = paired->high95;
}

/// What the record let one expect of the pass before a reading of it was known.
State expectedFor(const PianoRecord& record, int to, std::span<const Response> responses, std::array<double, 2> ratio) {
    if (to < 2) return {};
    PianoRecord earlier = record;
    earlier.passes.resize(static_cast<std::size_t>(to - 1));
    std::erase_if(earlier.done, [&](const Done& each) { return each.pass >= to; });
    return stateOf(earlier, to - 1, responses, ratio);
}

void addAchieved(DimensionComparison& out, const Sides& sides, const State& expected) {
    double sum = 0;
    double squares = 0;
    int n = 0;
    for (const auto& [cell, state] : expected) {
        if (cell.dimension != out.dimension || !state.expected) continue;
        const Judged* judged = sides.now.at(cell);
        if (!judged || !isNumber(*judged)) continue;
        const double miss = toTrade(*judged->value, row(cell.dimension).kind) - state.value;
        sum += miss;
        squares += miss * miss;
        ++n;
    }
    if (n == 0) return;
    out.achievedBias = sum / n;
    out.achievedRms = std::sqrt(squares / n);
}

std::optional<ClimateRemark> climateRemark(const Pass& from, const Pass& to) {
    constexpr double kTelling = 1.0; // per cent of moisture
    if (!from.climate || !to.climate) return std::nullopt;
    const auto before = equilibriumMoisture(from.climate->celsius, from.climate->humidity);
    const auto now = equilibriumMoisture(to.climate->celsius, to.climate->humidity);
    if (!before || !now) return std::nullopt;
    return ClimateRemark{*before, *now, std::abs(*now - *before) > kTelling};
}

Sides sidesOf(const PianoRecord& record, const Zones& zones, const Pass& from, const Pass& to) {
    Sides out{record, zones, withRelativeHeights(record.piano, from), withRelativeHeights(record.piano, to), {}, {}};
    out.before = review(record.piano, out.from, zones, Rule::plain, staleCells(record, from));
    out.now = review(record.piano, out.to, zones, Rule::plain, staleCells(record, to));
    return out;
}

DimensionComparison compareDimension(DimensionId id, const Sides& sides, const State& expected) {
    DimensionComparison out;
    out.dimension = id;
    const std::vector<Pair> pairs = pairsOf(id, sides);
    const Columns columns = columnsOf(pairs, sides.zones);
    fill(out, pairs, columns);
    addPairedInterval(out, columns);
    out.sections = sectionsIn(pairs, sides);
    out.ppk = ppkNow(id, sides);
    out.largestStep = largestStepNow(id, sides);
    addAchieved(out, sides, expected);
    return out;
}

void addWorse(Comparison& out, DimensionId id, const Sides& sides) {
    for (const Pair& pair : pairsOf(id, sides))
        if (gotWorse(*pair.before, *pair.now)) out.gotWorse.push_back(pair.cell);
}

} // namespace

Outcome<Comparison> comparePasses(const PianoRecord& record, const SpecSheet& sheet, int from, int to) {
    const Pass* first = record.pass(from);
    const Pass* second = record.pass(to);
    if (!first || !second) return refuse(RefusalCode::noSuchPass, std::to_string(first ? to : from));
    const Zones zones(sheet, record.piano, record.overrides);
    const Sides sides = sidesOf(record, zones, *first, *second);
    const std::array ratio = {estimateRatio(record.piano, record.passes, KeyColour::natural).value,
                              estimateRatio(record.piano, record.passes, KeyColour::sharp).value};
    PianoRecord relative = record; // learning compares heights of one line, drops of one reference
    for (Pass& pass : relative.passes)
        pass = withRelativeHeights(record.piano, pass);
    const std::vector<Response> responses = learnedResponses(relative, ratio);
    const State expected = expectedFor(relative, to, responses, ratio);

    // on the bench as in the piano, or the bench's own error would stand as a change
    const bool benchMoved =
        first->onBench != second->onBench && benchSetUp(record, second->onBench ? to : from).waits();
    Comparison out;
    out.from = from;
    out.to = to;
    for (const DimensionId id : sides.now.asked) {
        const auto& before = sides.before.asked;
        if (std::find(before.begin(), before.end(), id) == before.end()) continue;
        auto why = otherMethod(id, sides.from, sides.to);
        if (why.empty() && benchMoved) why = "bench-set-up";
        if (!why.empty()) {
            out.notComparable.emplace_back(id, why);
            continue;
        }
        out.dimensions.push_back(compareDimension(id, sides, expected));
        addWorse(out, id, sides);
    }
    std::sort(out.gotWorse.begin(), out.gotWorse.end());
    out.climate = climateRemark(*first, *second);
    std::copy_if(responses.begin(), responses.end(), std::back_inserter(out.learned),
                 [](const Response& each) { return each.learned; });
    return out;
}

} // namespace hammerline
