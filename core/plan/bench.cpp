#include "core/plan/bench.h"

#include "core/history/straps.h"
#include "core/survey/standing.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hammerline {

double CommonMove::largest() const {
    double largest = 0;
    for (const auto& [note, amount] : amounts)
        if (std::abs(amount) > std::abs(largest)) largest = amount;
    return largest;
}

bool Bench::read(Cell cell) const {
    const Measured* measured = pass().at(cell);
    return measured && !measured->missing();
}

double Bench::u(DimensionId id) const {
    return toTrade(uncertaintyOf(id, piano()), row(id).kind);
}

double Bench::shown(Cell cell) const {
    return cell.dimension == dimension::blow ? state(cell.note).shownBlow(R(cell.note))
                                             : state(cell.note).of(cell.dimension).value;
}

Goal zoneOf(const Zone& zone, DimensionId id) {
    constexpr double kOpen = std::numeric_limits<double>::infinity();
    const Kind kind = row(id).kind;
    return {zone.low ? toTrade(*zone.low, kind) : -kOpen, toTrade(zone.nominal, kind),
            zone.high ? toTrade(*zone.high, kind) : kOpen};
}

double outside(double value, double variance, const Goal& zone) {
    if (variance <= 0) return value < zone.low || value > zone.high ? 1 : 0;
    const double sd = std::sqrt(2 * variance);
    return 0.5 * std::erfc((zone.high - value) / sd) + 0.5 * std::erfc((value - zone.low) / sd);
}

Goal shrunk(const Goal& zone, double u) {
    const double width = zone.high - zone.low;
    const double by = std::isinf(width) ? u : std::min(u, 0.35 * width);
    // A lopsided zone keeps a third of its narrow side: a side of no width could never be met with a real step.
    return {std::isinf(zone.low) ? zone.low : zone.low + std::min(by, 0.65 * (zone.nominal - zone.low)), zone.nominal,
            std::isinf(zone.high) ? zone.high : zone.high - std::min(by, 0.65 * (zone.high - zone.nominal))};
}

double workBeyond(const Goal& zone, double variance) {
    return std::max(kProbablyOutside, 1.25 * outside(zone.nominal, variance, zone));
}

namespace {

/// A hammer held off its rail (M < 0) is short of blow by R |M| (computation 6): that is its lost motion's matter while
/// the blow of the rail itself is right.
bool shortByHanging(const Bench& bench, Cell cell) {
    if (cell.dimension != dimension::blow || !bench.piano().vertical()) return false;
    const Known& rail = bench.state(cell.note).of(dimension::blow);
    const auto& zone = bench.zones.at(cell);
    if (!rail.known || !zone) return false;
    const auto reading = bench.pass().value(cell);
    const double seen = reading ? toTrade(*reading, Kind::length) : bench.shown(cell);
    return rail.value - seen > bench.u(cell.dimension) &&
           outside(rail.value, rail.variance, zoneOf(*zone, cell.dimension)) <= 0.5;
}

/// Whether this probability of being outside is beyond workBeyond, which is never below kProbablyOutside.
bool worthWork(double probability, const Goal& zone, double variance) {
    return probability > kProbablyOutside && probability > workBeyond(zone, variance);
}

} // namespace

bool asksForWork(const Bench& bench, Cell cell) {
    const NoteStanding& standing = bench.stand(cell.note);
    if (standing.blocked || standing.held[cell.dimension.row] || standing.accepted[cell.dimension.row]) return false;
    const auto& zone = bench.zones.at(cell);
    if (!zone || shortByHanging(bench, cell)) return false;
    const Known& known = bench.state(cell.note).of(cell.dimension);
    if (known.known) {
        // What only the default ratio tells is no ground for work (bench-practice 2.6).
        if (known.derived && bench.ratio[static_cast<std::size_t>(bench.colour(cell.note))].fromDefault()) return false;
        const Goal limits = zoneOf(*zone, cell.dimension);
        const double byState = outside(bench.shown(cell), known.variance, limits);
        // A lone reading speaks for itself; what the relation makes of it counts once it is more likely out than in.
        const auto value = bench.pass().value(cell);
        if (!known.weighed && !known.expected && value) {
            const double alone = bench.u(cell.dimension) * bench.u(cell.dimension);
            return worthWork(outside(toTrade(*value, row(cell.dimension).kind), alone, limits), limits, alone) ||
                   (byState > 0.5 && worthWork(byState, limits, known.variance));
        }
        return worthWork(byState, limits, known.variance);
    }
    const Judged* judged = bench.reviewed.at(cell);
    return judged && !judged->stale && (judged->verdict == Verdict::low || judged->verdict == Verdict::high);
}

namespace {

/// What asks as it is found, before any common move.
void findAsked(Bench& bench) {
    for (int n = 1; n <= bench.piano().notes; ++n)
        for (const Dimension& dimension : dimensions())
            if (!dimension.wordsOnly && asksForWork(bench, {{n}, dimension.id}))
                bench.stand({n}).asked.set(dimension.id.row);
}

void findTightStraps(Bench& bench) {
    const std::vector<bool> tight = tightStraps(bench.record, *bench.record.pass(bench.pass().number));
    for (int n = 1; n <= bench.piano().notes; ++n)
        if (tight[static_cast<std::size_t>(n) - 1]) {
            bench.stand({n}).strapTight = true;
            bench.stand({n}).held.set(dimension::lostMotion.row);
        }
}

/// The open findings that must be done first.
void findBlocked(Bench& bench) {
    if (bench.record.findings.empty()) return;
    const Standing standing(bench.record.findings, bench.piano());
    for (int n = 1; n <= bench.piano().notes; ++n) {
        const auto blockers = standing.blockersOf({n});
        if (blockers.empty()) continue;
        bench.stand({n}).blocked = true;
        for (const Finding& finding : blockers)
            bench.blocked.push_back({{n}, finding});
    }
}

} // namespace

Outcome<Bench> layOut(const PianoRecord& record, const SpecSheet& sheet, int number, const PlanOptions& options) {
    if (!record.pass(number)) return refuse(RefusalCode::noSuchPass, std::to_string(number));
    std::vector<Pass> passes;
    for (const Pass& pass : record.passes)
        if (pass.number <= number) passes.push_back(withRelativeHeights(record.piano, pass));
    Zones zones(sheet, record.piano, record.overrides);
    std::vector<Cell> stale = staleCells(record, passes.back());
    Review reviewed = review(record.piano, passes.back(), zones, options.rule, stale);
    const std::array<Ratio, 2> ratio = {estimateRatio(record.piano, passes, KeyColour::natural),
                                        estimateRatio(record.piano, passes, KeyColour::sharp)};
    const std::array values = {ratio[0].value, ratio[1].value};
    Learned learned;
    std::vector<Response>& responses = learned.responses;
    if (record.done.empty()) {
        responses = firstResponses(record.piano, values);
    } else {
        PianoRecord relative = record;
        for (Pass& pass : relative.passes)
            pass = withRelativeHeights(record.piano, pass);
        learned = learn(relative, values);
    }
    const Answers answers(responses, record.piano);
    std::vector<const Pass*> through;
    for (const Pass& pass : passes)
        through.push_back(&pass);
    const auto spread = [&](std::size_t c) {
        return RatioOf{ratio[c].value, ratio[c].fromDefault()
                                           ? 0.06 * ratio[c].value
                                           : std::max(ratio[c].spread, kUsualSpread * ratio[c].value)};
    };
    auto notes = noteStates({&record, through, {spread(0), spread(1)}}, answers);
    std::vector<NoteStanding> standing(notes.size());
    Bench bench{record,
                options,
                std::move(passes),
                std::move(zones),
                std::move(stale),
                std::move(reviewed),
                ratio,
                {},
                answers,
                std::move(notes),
                std::move(standing),
                {},
                {},
                {},
                {}};
    bench.responses = std::move(responses);
    bench.tried = std::move(learned.trials);
    bench.answers = Answers(bench.responses, record.piano);
    findBlocked(bench);
    findTightStraps(bench);
    findAsked(bench);
    bench.causes = findCauses({&record, &bench.pass(), &bench.reviewed});
    return bench;
}

} // namespace hammerline
