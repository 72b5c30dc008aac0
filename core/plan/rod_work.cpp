#include "core/plan/rod_work.h"

#include "core/stats/robust.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

/// Figures in the dimension's trade unit (mm, %). Damper rise: notes of a list's members of 1996 and 1998 on hangers,
/// hooks and felts of the lift rod; the amounts are common practice, no source.
struct RodRow {
    DimensionId dimension;
    OperationId rod;
    std::size_t fewest;           // readings that make an order
    double endToEnd;              // a slope of more is looked at
    std::optional<double> single; // a note that differs by more from the middle is worked by itself
    std::string_view whySlope;
};
constexpr std::array kRods = {
    RodRow{dimension::damperRise, operation::pedalRod, 3, 1.5, 1.0, "rod-slopes"},
    RodRow{dimension::halfBlow, operation::halfBlowRod, 1, 3.0, std::nullopt, "rail-hinge"},
};

struct RodReading {
    NoteNumber note;
    double value = 0;
};

std::vector<RodReading> readingsOf(const Bench& bench, DimensionId dimension) {
    std::vector<RodReading> out;
    for (int n = 1; n <= bench.piano().notes; ++n) {
        const Cell cell{{n}, dimension};
        const auto count = bench.pass().value(cell);
        const NoteStanding& standing = bench.stand({n});
        const bool speaks = count && bench.zones.at(cell) && !standing.blocked && !standing.held[dimension.row];
        if (speaks) out.push_back({{n}, toTrade(*count, row(dimension).kind)});
    }
    return out;
}

double middleOf(const std::vector<RodReading>& readings) {
    std::vector<double> values;
    for (const RodReading& each : readings)
        values.push_back(each.value);
    return median(std::move(values)).value_or(0);
}

/// From the first reading to the last along the line through them (least squares), and whether that line explains what
/// the readings differ by: seven tenths of their spread at least (two level halves with a step between give three
/// quarters, one odd note among four a half).
double slopeOver(const std::vector<RodReading>& readings) {
    if (readings.size() < 2) return 0;
    const auto n = static_cast<double>(readings.size());
    double at = 0, value = 0;
    for (const RodReading& each : readings) {
        at += each.note.value / n;
        value += each.value / n;
    }
    double cross = 0, squares = 0, spread = 0;
    for (const RodReading& each : readings) {
        cross += (each.note.value - at) * (each.value - value);
        squares += std::pow(each.note.value - at, 2);
        spread += std::pow(each.value - value, 2);
    }
    const double slope = cross / squares;
    const bool explains = slope * cross >= 0.7 * spread;
    return explains ? slope * (readings.back().note.value - readings.front().note.value) : 0;
}

std::vector<NoteNumber> notesThatHave(const Bench& bench, DimensionId dimension) {
    std::vector<NoteNumber> notes;
    for (int n = 1; n <= bench.piano().notes; ++n)
        if (fitted(dimension, {n}, bench.piano())) notes.push_back({n});
    return notes;
}

Step forAll(const Bench& bench, const RodRow& rod, OperationId operation, double middle, const Zone& zone) {
    Step step;
    step.operation = operation;
    step.notes = notesThatHave(bench, rod.dimension);
    step.id = operation == operation::inspect
                  ? fmt::format("{}:{}", key(operation), key(rod.rod))
                  : fmt::format("{}:{}-{}", key(operation), step.notes.front().value, step.notes.back().value);
    step.access = accessOf(operation, bench.piano());
    step.serves = {rod.dimension};
    step.aimDimension = rod.dimension;
    step.now = fromTrade(middle, row(rod.dimension).kind);
    step.stopIf = row(operation).guard;
    step.unit = unitOf(operation, bench.piano());
    step.minutes = minutesFor(operation, bench.piano());
    if (operation == operation::inspect) {
        step.direction = Direction::inspect;
        step.why = rod.whySlope;
        return step;
    }
    const Goal goal = zoneOf(zone, rod.dimension);
    step.aim = goal.nominal;
    step.positive = goal.nominal > middle;
    step.direction = directionOf(operation, goal.nominal - middle, bench.piano());
    step.why = key(middle < goal.low ? Verdict::low : Verdict::high);
    return step;
}

std::vector<Step> singleNotes(Bench& bench, const RodRow& rod, const std::vector<RodReading>& readings, double middle,
                              double moved) {
    std::vector<Step> steps;
    const bool lever = applies(operation::leverTiming, bench.piano());
    const OperationId own = lever ? operation::leverTiming : operation::damperWire;
    if (!rod.single || !applies(own, bench.piano())) return steps;
    for (const RodReading& each : readings) {
        if (std::abs(each.value - middle) <= *rod.single) continue;
        NoteTask task;
        task.operation = own;
        task.serves = rod.dimension;
        task.aim = middle + moved;
        task.from = each.value + moved;
        task.change = task.aim - task.from;
        task.why = key(each.value < middle ? Verdict::low : Verdict::high);
        // A lever that starts later rises less.
        steps.push_back(noteStep(bench, each.note, task, lever ? -task.change : task.change));
    }
    return steps;
}

void follow(Bench& bench, const RodRow& rod, double change) {
    for (const NoteNumber note : notesThatHave(bench, rod.dimension))
        if (const Response* response = bench.answers.at(rod.rod, note))
            moveAt(bench.notes, bench.piano(), note, *response, change / response->effects.front().perUnit);
}

} // namespace

std::vector<Step> rodWork(Bench& bench) {
    std::vector<Step> steps;
    for (const RodRow& rod : kRods) {
        if (!applies(rod.rod, bench.piano())) continue;
        const auto readings = readingsOf(bench, rod.dimension);
        if (readings.size() < rod.fewest) continue;
        const double middle = middleOf(readings);
        const Zone& zone = *bench.zones.at({readings[readings.size() / 2].note, rod.dimension});
        const Goal goal = zoneOf(zone, rod.dimension);
        double moved = 0;
        if (middle < goal.low || middle > goal.high) {
            steps.push_back(forAll(bench, rod, rod.rod, middle, zone));
            moved = goal.nominal - middle;
            follow(bench, rod, moved);
        }
        if (std::abs(slopeOver(readings)) > rod.endToEnd) {
            steps.push_back(forAll(bench, rod, operation::inspect, middle, zone));
            continue;
        }
        for (Step& step : singleNotes(bench, rod, readings, middle, moved))
            steps.push_back(std::move(step));
    }
    return steps;
}

std::vector<ToRead> readForRods(const Bench& bench) {
    std::vector<ToRead> next;
    for (const RodRow& rod : kRods) {
        if (!applies(rod.rod, bench.piano())) continue;
        const auto readings = readingsOf(bench, rod.dimension);
        const bool out = std::ranges::any_of(readings, [&](const RodReading& each) {
            const Goal goal = zoneOf(*bench.zones.at({each.note, rod.dimension}), rod.dimension);
            return each.value < goal.low || each.value > goal.high;
        });
        if (!out || readings.size() >= rod.fewest) continue;
        const auto notes = notesThatHave(bench, rod.dimension);
        for (const NoteNumber note : {notes.front(), notes[notes.size() / 2], notes.back()})
            if (!bench.pass().value({note, rod.dimension})) next.push_back({{note, rod.dimension}, "doubtful"});
    }
    return next;
}

} // namespace hammerline
