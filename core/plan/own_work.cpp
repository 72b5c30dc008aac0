#include "core/plan/own_work.h"

#include "core/plan/doubts.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

using namespace dimension;

struct OwnRow {
    DimensionId dimension;
    OperationId operation; // the first row whose operation the action has
};
constexpr std::array kOwnRows = {
    OwnRow{drop, operation::dropTurn},
    OwnRow{checking, operation::checkBend},
    OwnRow{damperStart, operation::spoonBend},
    OwnRow{damperStart, operation::leverTiming},
    OwnRow{damperStart, operation::damperWire},
    OwnRow{strap, operation::bridleBend},
    OwnRow{playerClearance, operation::playerScrew},
    // No adjustment mends these: look at the parts.
    OwnRow{downWeight, operation::inspect},
    OwnRow{upWeight, operation::inspect},
    OwnRow{blow, operation::inspect},
};

struct WordRow {
    WordId word;
    DimensionId dimension;
    double way; // the reading has to grow (+) or shrink (-)
};
constexpr std::array kWordRows = {
    WordRow{word::noLetOff, letOff, 1},   WordRow{word::doesNotCheck, checking, -1},
    WordRow{word::tight, strap, 1},       WordRow{word::slack, strap, -1},
    WordRow{word::torn, strap, 0},        WordRow{word::early, damperStart, 1},
    WordRow{word::late, damperStart, -1},
};

double wayOf(WordId word, DimensionId dimension) {
    for (const WordRow& row : kWordRows)
        if (row.word == word && row.dimension == dimension) return row.way;
    return 0;
}

OwnTask taskFor(Bench& bench, NoteNumber n, OperationId operation, DimensionId dimension) {
    const auto& zone = bench.zones.at({n, dimension});
    const Measured* measured = bench.pass().at({n, dimension});
    const auto word = measured ? measured->word() : std::nullopt;
    OwnTask own;
    own.note = n;
    own.task.operation = operation;
    own.task.serves = dimension;
    own.task.why = bench.stand(n).cause;
    if (zone) own.task.aim = toTrade(zone->nominal, row(dimension).kind);
    if (bench.stand(n).uneven[dimension.row])
        if (const auto even = evenGoal(bench, {n, dimension})) own.task.aim = even->nominal;
    NoteState& state = bench.state(n);
    if (const Known& known = state.of(dimension); known.known && zone) {
        own.task.from = bench.shown({n, dimension});
        own.task.change = own.task.aim - own.task.from;
        own.way = own.task.change;
    } else if (word) {
        own.way = wayOf(*word, dimension);
    }
    if (word == word::torn) own.task.operation = operation::inspect;
    const Response* response = bench.answers.at(operation, n);
    if (!response || operation == operation::inspect) return own;
    const double perUnit = response->effects.front().perUnit;
    const AmountUnit unit = unitOf(operation, bench.piano());
    if (response->learned && state.of(dimension).known && unit != AmountUnit::none) {
        const double exact = own.task.change / perUnit;
        const double step = unit == AmountUnit::turn ? screwStep(perUnit, zoneOf(*zone, dimension)) : 0.1;
        own.task.amount = std::round(exact / step) * step;
        if (*own.task.amount != 0) {
            own.task.change = *own.task.amount * perUnit;
            move(state, *response, *own.task.amount, unit);
        }
    } else if (zone) {
        setToAim(state, *response, own.task.aim, bench.u(dimension));
    }
    return own;
}

} // namespace

std::optional<OwnTask> wordWork(Bench& bench, NoteNumber n, const NotePlan& plan) {
    const Cell cell{n, letOff};
    if (bench.state(n).of(letOff).known || !asksForWork(bench, cell) || !applies(operation::letOffTurn, bench.piano()))
        return std::nullopt;
    const bool planned = std::any_of(plan.tasks.begin(), plan.tasks.end(),
                                     [](const NoteTask& t) { return t.operation == operation::letOffTurn; });
    if (planned) return std::nullopt;
    OwnTask own = taskFor(bench, n, operation::letOffTurn, letOff);
    if (own.way == 0) return std::nullopt;
    return own;
}

std::vector<OwnTask> ownWork(Bench& bench, NoteNumber n, const NotePlan& plan) {
    std::vector<OwnTask> tasks;
    std::optional<DimensionId> done;
    for (const OwnRow& row : kOwnRows) {
        if (done == row.dimension || !applies(row.operation, bench.piano()) || !fitted(row.dimension, n, bench.piano()))
            continue;
        // The blow is the coupled work's; only a short one on a vertical is left to be looked at.
        if (row.dimension == blow) {
            const bool served =
                std::any_of(plan.tasks.begin(), plan.tasks.end(), [](const NoteTask& t) { return t.serves == blow; });
            if (!bench.piano().vertical() || served) continue;
        }
        const bool tight = row.dimension == strap && bench.stand(n).strapTight;
        if (!tight && !asksForWork(bench, {n, row.dimension})) continue;
        tasks.push_back(taskFor(bench, n, row.operation, row.dimension));
        if (tight) tasks.back().way = wayOf(word::tight, strap);
        done = row.dimension;
    }
    return tasks;
}

} // namespace hammerline
