#include "core/plan/core_work.h"

#include "core/plan/doubts.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hammerline {

namespace {

constexpr double kOpen = std::numeric_limits<double>::infinity();
// What a note that cannot be brought in is charged with when common moves are weighed: it will be looked at again.
constexpr double kUnsolvedMinutes = 6;
constexpr double kCloseMargin = 0.4;
// Cloth behind one shank, mm: a hammer that wants more has another fault (shank, head, butt, the rail's felt) and is
// looked at. Common practice, no source.
constexpr double kMostCloth = 1.0;

struct MoveRow {
    OperationId operation;
    Core own;
    bool grandOnly, verticalOnly;
    Bounds bounds;
};
constexpr std::array kMoveRows = {
    MoveRow{operation::balancePunching, Core::height, false, false, {-kOpen, kOpen}},
    MoveRow{operation::capstanTurn, Core::lostMotion, false, true, {-kOpen, kOpen}},
    MoveRow{operation::capstanTurn, Core::blow, true, false, {-kOpen, kOpen}},
    // Cloth on the rail can only be added: one short blow on a vertical is inspected, not planned.
    MoveRow{operation::railClothShim, Core::blow, false, true, {-kOpen, 0}},
    MoveRow{operation::letOffTurn, Core::letOff, false, false, {-kOpen, kOpen}},
    MoveRow{operation::frontPunching, Core::dip, false, false, {-kOpen, kOpen}},
};

std::vector<CoreMove> movesOf(const Bench& bench, KeyColour colour) {
    std::vector<CoreMove> moves;
    for (const MoveRow& row : kMoveRows) {
        const bool vertical = bench.piano().vertical();
        if ((row.grandOnly && vertical) || (row.verticalOnly && !vertical)) continue;
        if (!applies(row.operation, bench.piano())) continue;
        const Response* response = bench.answers.of(row.operation, colour);
        if (!response || response->effects.front().perUnit == 0) continue;
        CoreMove move{row.operation, row.own, {}, minutesFor(row.operation, bench.piano()), row.bounds};
        const double own = response->effects.front().perUnit;
        for (std::size_t i = 0; i < kCoreCount; ++i)
            for (const Effect& effect : response->effects)
                if (effect.dimension == dimensionOf(static_cast<Core>(i), colour))
                    move.effects[i] = effect.perUnit / own;
        moves.push_back(move);
    }
    return moves;
}

} // namespace

double screwStep(double perTurn, const Goal& zone) {
    const double width = std::isinf(zone.high - zone.low) ? 4 * 0.25 : zone.high - zone.low;
    double step = 0.5;
    while (step > 1.0 / 16 && std::abs(perTurn) * step > width / 4)
        step /= 2;
    return step;
}

CoreWork::CoreWork(const Bench& bench) {
    for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp})
        m_moves[static_cast<std::size_t>(colour)] = movesOf(bench, colour);
    for (const auto& moves : m_moves)
        m_workers.emplace_back(moves);
}

namespace {

/// Doubtful where the note is worked anyway. Not the height: a key that stands within stays where it is.
bool comesAlong(const Bench& bench, Cell cell) {
    const NoteStanding& standing = bench.stand(cell.note);
    const bool kept = standing.held[cell.dimension.row] || standing.accepted[cell.dimension.row];
    const bool height = cell.dimension == dimension::keyHeight || cell.dimension == dimension::sharpHeight;
    return !kept && !height && outsideAt(bench, cell) > kComesAlong;
}

} // namespace

CoreWork::Reach CoreWork::reach(const Bench& bench, NoteNumber n, double margin) const {
    Reach reach;
    const KeyColour colour = bench.colour(n);
    std::array<bool, kCoreCount> asks{};
    for (std::size_t i = 0; i < kCoreCount; ++i) {
        const DimensionId id = dimensionOf(static_cast<Core>(i), colour);
        const Known& known = bench.state(n).of(id);
        const auto& zone = bench.zones.at({n, id});
        if (!zone || !known.known) continue;
        if (known.derived && bench.ratio[static_cast<std::size_t>(colour)].fromDefault()) continue;
        reach.note.value[i] = known.value;
        reach.note.goal[i] = shrunk(zoneOf(*zone, id), margin * bench.u(id));
        asks[i] = asksForWork(bench, {n, id});
        reach.asks = reach.asks || asks[i];
        if (!bench.stand(n).uneven[id.row]) {
            reach.forItsZone = reach.forItsZone || asks[i];
        } else if (const auto even = evenGoal(bench, {n, id})) {
            reach.note.goal[i] = even;
        }
    }
    for (std::size_t i = 0; i < kCoreCount; ++i) {
        const DimensionId id = dimensionOf(static_cast<Core>(i), colour);
        if (!reach.note.goal[i] || asks[i] || comesAlong(bench, {n, id})) continue;
        // What does not ask may stay where it is, and is sent no nearer to a limit.
        Goal& goal = *reach.note.goal[i];
        goal.low = std::min(goal.low, reach.note.value[i]);
        goal.high = std::max(goal.high, reach.note.value[i]);
    }
    const auto moves = this->moves(colour);
    const bool keepDip = bench.options.floating == Float::aftertouch && !asks[place(Core::dip)];
    for (std::size_t j = 0; j < moves.size(); ++j) {
        const CoreMove& move = moves[j];
        const DimensionId own = dimensionOf(move.own, colour);
        const bool held = bench.stand(n).held[own.row] || bench.stand(n).accepted[own.row];
        // What is not measured is not adjusted; only the front punching is also told by the aftertouch gauge.
        const bool known = reach.note.goal[place(move.own)].has_value() ||
                           (move.own == Core::dip && reach.note.goal[place(Core::aftertouch)].has_value());
        // Keys that stand level stay level: no key is lifted for its dip or its aftertouch. Cloth only for a short
        // blow.
        const bool onlyForItself =
            move.operation == operation::railClothShim || move.operation == operation::balancePunching;
        if (held || !known || (onlyForItself && !asks[place(move.own)])) continue;
        const auto& blow = reach.note.goal[place(Core::blow)];
        const double tooLong = blow ? reach.note.value[place(Core::blow)] - blow->high : 0;
        const bool tooThick =
            move.operation == operation::railClothShim && tooLong > kMostCloth * bench.piano().railFactor;
        if (tooThick) continue;
        // Dip held even: it is not spent on aftertouch (situation 13), except where the height is worked anyway.
        // Only where nothing else helps may it give way, inside its zone.
        const bool spared = move.own == Core::dip && keepDip && !asks[place(Core::height)];
        (spared ? reach.lastResort : reach.allowed) |= 1U << j;
    }
    return reach;
}

std::optional<NoteWork> CoreWork::leastWork(KeyColour colour, const Reach& reach) {
    if (const auto work = worker(colour).leastWork(reach.note, reach.allowed)) return work;
    return worker(colour).leastWork(reach.note, reach.allowed | reach.lastResort);
}

double CoreWork::minutes(const Bench& bench, NoteNumber n) {
    const Reach reach = this->reach(bench, n);
    if (!reach.asks || bench.stand(n).blocked) return 0;
    return worker(bench.colour(n))
        .leastMinutes(reach.note, reach.allowed | reach.lastResort)
        .value_or(kUnsolvedMinutes);
}

/// Full: each dimension to its nominal where the gauge can tell it from it, the floating one solved from the relation.
std::optional<NoteWork> CoreWork::full(const Bench& bench, NoteNumber n, const Reach& reach) {
    const KeyColour colour = bench.colour(n);
    const auto moves = this->moves(colour);
    unsigned taken = 0;
    for (std::size_t j = 0; j < moves.size(); ++j) {
        if (!(reach.allowed >> j & 1U)) continue;
        Core own = moves[j].own;
        if (own == Core::dip && bench.options.floating == Float::dip) own = Core::aftertouch;
        const auto& goal = reach.note.goal[place(own)];
        if (!goal) continue;
        const double off = std::abs(reach.note.value[place(own)] - goal->nominal);
        if (off > bench.u(dimensionOf(own, colour))) taken |= 1U << j;
    }
    if (taken == 0) return std::nullopt;
    NoteWork work = worker(colour).toNominal(reach.note, taken, bench.options.floating == Float::dip);
    CoreNote after = reach.note;
    after.value = worker(colour).after(reach.note, work);
    if (NoteWorker::met(after)) return work;
    return std::nullopt;
}

Conflict CoreWork::conflictAt(const Bench& bench, NoteNumber n, const CoreNote& note) const {
    const KeyColour colour = bench.colour(n);
    const double R = bench.R(n);
    const auto limits = [&](Core core) {
        const DimensionId id = dimensionOf(core, colour);
        const auto& zone = bench.zones.at({n, id});
        return zone ? zoneOf(*zone, id)
                    : Goal{note.value[place(core)], note.value[place(core)], note.value[place(core)]};
    };
    const Goal D = limits(Core::dip), A = limits(Core::aftertouch), B = limits(Core::blow), O = limits(Core::letOff);
    const Goal M = bench.piano().vertical() ? limits(Core::lostMotion) : Goal{0, 0, 0};
    Conflict conflict{n, "cannot-come-in"};
    // computation 9.3: the dip that these zones imply, against the dip zone.
    const double least = M.low + (B.low - O.high) / R + A.low, most = M.high + (B.high - O.low) / R + A.high;
    conflict.aftertouchAtLeast = A.low;
    conflict.needsDip = least;
    conflict.keyGives = D.high;
    if (!std::isfinite(least) || !std::isfinite(most)) return conflict;
    const double gap = least > D.high ? least - D.high : most < D.low ? D.low - most : 0;
    if (gap > 0) {
        conflict.what = least > D.high ? "dip-too-shallow-for-aftertouch" : "dip-too-deep-for-aftertouch";
        if (least <= D.high) {
            conflict.needsDip = most;
            conflict.keyGives = D.low;
        }
        conflict.raiseKey = gap / keyLever(bench.piano().armsOf(colour)).dipPerBalance;
        conflict.shortenBlow = gap * R;
        conflict.aftertouchThen = least > D.high ? A.low - gap : A.high + gap;
    }
    return conflict;
}

/// Nothing brings everything in: give up the floating dimension first, then whatever is left of the goals, and say so.
NoteWork CoreWork::bestEffort(NoteNumber n, KeyColour colour, const Reach& reach, const Bench& bench,
                              std::optional<Conflict>& conflict) {
    CoreNote relaxed = reach.note;
    relaxed.goal[place(Core::aftertouch)].reset();
    if (reach.note.goal[place(Core::aftertouch)]) {
        if (const auto work = worker(colour).leastWork(relaxed, reach.allowed); work || NoteWorker::met(relaxed)) {
            conflict = conflictAt(bench, n, reach.note);
            NoteWork taken = work.value_or(NoteWork{});
            const double left = worker(colour).after(reach.note, taken)[place(Core::aftertouch)];
            if (conflict->what == "cannot-come-in") {
                conflict->what = "aftertouch-floats";
                conflict->needsDip = conflict->keyGives = 0;
                conflict->aftertouchThen = left;
            }
            return taken;
        }
    }
    conflict = conflictAt(bench, n, reach.note);
    // Only the moves whose own dimension is out: the others could not mend it either.
    unsigned out = 0;
    const auto moves = this->moves(colour);
    for (std::size_t j = 0; j < moves.size(); ++j) {
        const auto& goal = reach.note.goal[place(moves[j].own)];
        const double value = reach.note.value[place(moves[j].own)];
        if ((reach.allowed >> j & 1U) && goal && (value < goal->low || value > goal->high)) out |= 1U << j;
    }
    const NoteWork work = worker(colour).by(relaxed, out);
    // Nothing that is out may be sent farther out.
    const auto after = worker(colour).after(reach.note, work);
    for (std::size_t i = 0; i < kCoreCount; ++i) {
        const auto& goal = relaxed.goal[i];
        const auto miss = [&](double value) { return std::max({goal->low - value, value - goal->high, 0.0}); };
        if (goal && miss(after[i]) > miss(reach.note.value[i]) + 1e-6) return NoteWork{};
    }
    return work;
}

namespace {

bool waits(const Bench& bench, NoteNumber n) {
    for (std::size_t i = 0; i < kCoreCount; ++i)
        if (bench.stand(n).held[dimensionOf(static_cast<Core>(i), bench.colour(n)).row]) return true;
    return false;
}

} // namespace

NotePlan CoreWork::plan(Bench& bench, NoteNumber n) {
    NotePlan plan{n, {}, {}};
    if (bench.stand(n).blocked) return plan;
    const KeyColour colour = bench.colour(n);
    const Reach reach = this->reach(bench, n);
    std::optional<NoteWork> work;
    if (bench.options.intent == Intent::full) work = full(bench, n, reach);
    if (!work && reach.asks) {
        work = leastWork(colour, reach);
        // Zones that only just meet leave no room for what the gauge cannot tell: better close than not at all.
        if (!work) work = leastWork(colour, this->reach(bench, n, kCloseMargin));
        if (!work) work = leastWork(colour, this->reach(bench, n, 0));
        // Off its neighbours, but no work brings it to them: it stays as it is, inside its zone.
        if (!work && reach.forItsZone) work = bestEffort(n, colour, reach, bench, plan.conflict);
        // What a cause holds back waits for it: nothing is a conflict before that is done.
        if (waits(bench, n)) plan.conflict.reset();
    }
    if (work && work->taken != 0) carryOut(bench, n, reach, *work, plan);
    return plan;
}

namespace {

/// Amounts that can be done: punchings of the stock, steps of a screw.
void round(NoteTask& task, const Response& response, const Bench& bench, NoteNumber n) {
    const double perUnit = response.effects.front().perUnit;
    const double exact = task.change / perUnit;
    const AmountUnit unit = unitOf(task.operation, bench.piano());
    if (unit == AmountUnit::turn) {
        if (!response.learned) return;
        const auto& zone = bench.zones.at({n, task.serves});
        const double step = screwStep(perUnit, zone ? zoneOf(*zone, task.serves) : Goal{-kOpen, 0, kOpen});
        task.amount = std::round(exact / step) * step;
    } else if (exact > 0 &&
               (task.operation == operation::balancePunching || task.operation == operation::frontPunching)) {
        const auto stack = shimStack(fromMm(exact), bench.piano().stock);
        task.stack = stack.pieces;
        task.amount = static_cast<double>(fromMm(exact).nm + stack.error.nm) / kNmPerMm;
    } else {
        task.amount = std::round(exact * 100) / 100;
    }
    task.change = *task.amount * perUnit;
}

} // namespace

void CoreWork::carryOut(Bench& bench, NoteNumber n, const Reach& reach, const NoteWork& work, NotePlan& plan) const {
    const KeyColour colour = bench.colour(n);
    const auto moves = this->moves(colour);
    auto value = reach.note.value;
    std::array<double, kCoreCount> drift{}; // what rounding has left so far
    // In the order of work, each from where the earlier ones leave it: what rounding loses, the next one's aim regains.
    std::vector<std::size_t> order;
    for (std::size_t j = 0; j < moves.size(); ++j)
        if (work.taken >> j & 1U) order.push_back(j);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return placeInWork(moves[a].operation, bench.piano().action) <
               placeInWork(moves[b].operation, bench.piano().action);
    });
    for (const std::size_t j : order) {
        const CoreMove& move = moves[j];
        const Response& response = *bench.answers.at(move.operation, n);
        NoteTask task;
        task.operation = move.operation;
        task.serves = dimensionOf(move.own, colour);
        task.change = work.amounts[j] - drift[place(move.own)];
        if (!reach.note.goal[place(move.own)]) task.serves = dimension::aftertouch;
        const KeyLever lever = keyLever(bench.piano().armsOf(colour));
        if (move.operation == operation::capstanTurn)
            task.atPart = -(bench.piano().vertical() ? task.change : task.change / bench.R(n)) / lever.lostPerCapstan;
        else if (row(move.operation).unit == AmountUnit::mm)
            task.atPart = task.change / response.effects.front().perUnit;
        round(task, response, bench, n);
        for (std::size_t i = 0; i < kCoreCount; ++i)
            drift[i] += move.effects[i] * (task.change - work.amounts[j]);
        if (std::abs(task.change) < 1e-9) continue;
        for (std::size_t i = 0; i < kCoreCount; ++i)
            value[i] += move.effects[i] * task.change;
        const Core served = reach.note.goal[place(move.own)] ? move.own : Core::aftertouch;
        task.aim = value[place(served)];
        task.from = task.aim - task.change;
        NoteState& state = bench.state(n);
        if (task.amount)
            moveAt(bench.notes, bench.piano(), n, response, *task.amount);
        else
            setToAimAt(bench.notes, bench.piano(), n, response, state.of(task.serves).value + task.change,
                       bench.u(task.serves));
        task.why = bench.stand(n).cause;
        plan.tasks.push_back(std::move(task));
    }
}

} // namespace hammerline
