#include "core/plan/bench.h"

#include "core/causes/in_visit.h"
#include "core/history/straps.h"
#include "core/plan/doubts.h"
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

constexpr double kNoLimit = std::numeric_limits<double>::infinity();

/// The eye tells whether the hammer lies on its rail: a number of 0 or more says so, one below -0.1 that it hangs
/// (bench-practice 4, the rail tests). The strip, which tells how much, is too coarse for that side.
constexpr double kHangs = -0.1;
/// A gap that a tug at the shank tells, 0.15 mm there; a guess, no source. mm at the key.
constexpr double kGapIsSeen = -0.03;
constexpr double kEyeWrong = 0.02;
constexpr double kRounding = 1e-9; // mm

/// "Nothing is too little": a lower limit that a strip of 0.1 mm cannot tell from 0.
constexpr double kCountsAsNothing = 0.05;

} // namespace

bool toldByEye(const Bench& bench, Cell cell) {
    if (cell.dimension != dimension::lostMotion || !bench.piano().vertical()) return false;
    const auto& zone = bench.zones.at(cell);
    return zone && zoneOf(*zone, cell.dimension).low <= kCountsAsNothing + kRounding;
}

Goal limitsAt(const Bench& bench, Cell cell) {
    const auto& zone = bench.zones.at(cell);
    if (!zone) return {-kNoLimit, 0, kNoLimit};
    Goal limits = zoneOf(*zone, cell.dimension);
    if (!toldByEye(bench, cell)) return limits;
    // Nobody has looked since it was moved: the hammer may hang by what an eye would see.
    const Known& known = bench.state(cell.note).of(cell.dimension);
    const bool looked = known.readings > 0 || known.onRail;
    limits.low = std::min(limits.low, looked ? kHangs : kGapIsSeen);
    return limits;
}

bool seenOnRail(const Bench& bench, Cell cell) {
    return bench.state(cell.note).of(cell.dimension).onRail && toldByEye(bench, cell);
}

OwnReadings ownReadings(const Bench& bench, Cell cell) {
    const Known& known = bench.state(cell.note).of(cell.dimension);
    if (known.readings == 0) return {};
    const Goal limits = limitsAt(bench, cell);
    const double own = known.own + bench.shown(cell) - known.value; // a blow as it is seen
    return {own, own < limits.low - kRounding || own > limits.high + kRounding};
}

double outsideAt(const Bench& bench, Cell cell) {
    const Known& known = bench.state(cell.note).of(cell.dimension);
    const auto& zone = bench.zones.at(cell);
    if (!known.known || !zone) return 0;
    Goal limits = limitsAt(bench, cell);
    const double value = bench.shown(cell);
    if (!seenOnRail(bench, cell)) return outside(value, known.variance, limits);
    limits.low = -kNoLimit;
    return std::min(outside(value, known.variance, limits) + kEyeWrong, 1.0);
}

namespace {

// What lies outside by more than one reading can be wrong needs no second one.
constexpr double kPlainly = 0.9;

/// By its own readings since it was last disturbed, or by what is expected of it where nobody has read it since.
bool asksByState(const Bench& bench, Cell cell, const Known& known) {
    const double probability = outsideAt(bench, cell);
    if (known.readings == 0) return probability > kUnreadOutside;
    const Goal limits = limitsAt(bench, cell);
    // The newest look decides what the eye tells, whatever a strip read before.
    if (toldByEye(bench, cell) && known.latest < limits.low - kRounding) return true;
    // Three readings decide: whatever doubt they leave is worked, or it would stay for good.
    if (known.readings >= kReadingsDecide) return probability > kOutsideDecided;
    if (!ownReadings(bench, cell).outside) return known.readings >= 2 && probability > kOutsideAgainstReadings;
    // A key is lifted or let down on more than one reading near a limit (6 seconds against a punching and what
    // follows).
    const bool height = cell.dimension == dimension::keyHeight || cell.dimension == dimension::sharpHeight;
    const bool readAgain = height && known.readings < 2;
    return probability > (readAgain ? kPlainly : kOutside);
}

} // namespace

bool asksForWork(const Bench& bench, Cell cell) {
    const NoteStanding& standing = bench.stand(cell.note);
    if (standing.blocked || standing.held[cell.dimension.row] || standing.accepted[cell.dimension.row]) return false;
    const auto& zone = bench.zones.at(cell);
    if (!zone || shortByHanging(bench, cell)) return false;
    if (standing.uneven[cell.dimension.row]) return true;
    const Known& known = bench.state(cell.note).of(cell.dimension);
    // What nobody has read is no ground for work: it is read first.
    if (known.known) return !known.derived && asksByState(bench, cell, known);
    const Judged* judged = bench.reviewed.at(cell);
    return judged && !judged->stale && (judged->verdict == Verdict::low || judged->verdict == Verdict::high);
}

namespace {

constexpr double kUneven = 0.5;
constexpr int kReadingsOfUneven = 2;

/// Touch-up: what stands off the line of its neighbours, by two readings or more.
void findUneven(Bench& bench) {
    const Doubts doubts(bench);
    for (int n = 1; n <= bench.piano().notes; ++n)
        for (const Dimension& dimension : dimensions()) {
            const CellDoubt& doubt = doubts.at({{n}, dimension.id});
            if (doubt.uneven > kUneven && doubt.readings >= kReadingsOfUneven)
                bench.stand({n}).uneven.set(dimension.id.row);
        }
}

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
        return RatioOf{ratio[c].value,
                       ratio[c].fromDefault()
                           ? std::max(std::min(0.06 * ratio[c].value, ratio[c].spread), kUsualSpread * ratio[c].value)
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
    findUneven(bench);
    findAsked(bench);
    const Pass found = foundInVisit(record, bench.pass());
    if (found.cells.size() == bench.pass().cells.size()) {
        bench.causes = findCauses({&record, &bench.pass(), &bench.reviewed});
    } else {
        const Review whole = review(record.piano, found, bench.zones, options.rule, bench.stale);
        bench.causes = findCauses({&record, &found, &whole});
    }
    return bench;
}

} // namespace hammerline
