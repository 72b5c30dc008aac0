#include "core/plan/steps.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

/// Signed amount of one go within the cap.
std::optional<double> goOf(const Bench& bench, const Step& step) {
    if (!step.amount) return std::nullopt;
    const double cap = capOf(step.operation, bench.piano());
    if (cap <= 0 || std::abs(*step.amount) <= cap) return step.amount;
    return std::copysign(cap, *step.amount);
}

std::string rangeOf(const std::vector<NoteNumber>& notes) {
    if (notes.empty()) return "-";
    return fmt::format("{}-{}", notes.front().value, notes.back().value);
}

/// The reading a line starts from; where there is none in this pass, or the plan's earlier work at the note moves it by
/// more than the gauge's uncertainty, what is expected then.
std::optional<std::int64_t> startOf(const Bench& bench, NoteNumber note, const NoteTask& task) {
    const Kind kind = row(task.serves).kind;
    const auto reading = bench.pass().value({note, task.serves});
    const Known& known = bench.state(note).of(task.serves);
    if (reading && (!known.known || std::abs(toTrade(*reading, kind) - task.from) <= bench.u(task.serves)))
        return reading;
    return known.known ? std::optional(fromTrade(task.from, kind)) : reading;
}

} // namespace

Step commonStep(const Bench& bench, const CommonMove& move) {
    Step step;
    step.operation = move.operation;
    // A piece of the rest rail is known by its own range, a shimmed rail by its ends.
    step.id = fmt::format("{}:{}", key(move.operation), rangeOf(move.notes));
    step.access = accessOf(move.operation, bench.piano());
    step.notes = move.notes;
    for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp}) {
        const DimensionId served = servesOf(move.operation, colour, bench.piano());
        if (std::find(step.serves.begin(), step.serves.end(), served) == step.serves.end())
            step.serves.push_back(served);
    }
    step.aimDimension = step.serves.front();
    step.amount = move.largest();
    step.atPart = step.amount;
    step.amounts = move.amounts;
    step.unit = AmountUnit::mm;
    step.go = goOf(bench, step);
    step.positive = *step.amount >= 0;
    step.direction = directionOf(move.operation, *step.amount, bench.piano());
    const Response* response = bench.answers.at(move.operation, move.notes.front());
    step.opposite = response && response->opposite;
    step.stopIf = row(move.operation).guard;
    step.why = move.why;
    step.minutes = minutesFor(move.operation, bench.piano());
    return step;
}

Step noteStep(const Bench& bench, NoteNumber note, const NoteTask& task, double way) {
    Step step;
    step.operation = task.operation;
    step.note = note;
    step.notes = {note};
    step.id = fmt::format("{}:{}", key(task.operation), note.value);
    step.access = accessOf(task.operation, bench.piano());
    step.serves = {task.serves};
    step.aimDimension = task.serves;
    const bool looked = task.operation == operation::inspect;
    if (!looked && task.serves != dimension::strap) step.aim = task.aim;
    step.now = startOf(bench, note, task);
    if (const Measured* measured = bench.pass().at({note, task.serves})) step.nowWord = measured->word();
    step.amount = looked ? std::nullopt : task.amount;
    step.atPart = task.atPart;
    step.stack = task.stack;
    step.unit = unitOf(task.operation, bench.piano());
    step.go = goOf(bench, step);
    const Response* response = bench.answers.at(task.operation, note);
    const double perUnit = response && !response->effects.empty() ? response->effects.front().perUnit : 1;
    step.positive = way * perUnit >= 0;
    step.direction = directionOf(task.operation, way * perUnit, bench.piano());
    step.opposite = response && response->opposite;
    if (looked) step.direction = Direction::inspect;
    step.stopIf = row(task.operation).guard;
    const Judged* judged = bench.reviewed.at({note, task.serves});
    const bool outsideNow = judged && (judged->verdict == Verdict::low || judged->verdict == Verdict::high);
    if (!task.why.empty())
        step.why = task.why;
    else if (outsideNow)
        step.why = key(judged->verdict);
    else
        step.why = bench.stand(note).uneven[task.serves.row]  ? "uneven"
                   : bench.stand(note).asked[task.serves.row] ? "probably-outside"
                                                              : "follows";
    step.minutes = minutesFor(task.operation, bench.piano());
    // A capped amount takes more goes, each with its look (bench-practice 2.7).
    if (const double cap = capOf(task.operation, bench.piano()); step.amount && cap > 0)
        step.minutes *= std::max(1.0, std::ceil(std::abs(*step.amount) / cap - 0.1));
    return step;
}

namespace {

const TrialAnswer* saidOf(const Bench& bench, OperationId operation) {
    const auto found = std::find_if(bench.tried.begin(), bench.tried.end(),
                                    [&](const TrialAnswer& each) { return each.operation == operation; });
    return found == bench.tried.end() ? nullptr : &*found;
}

bool among(std::span<const NoteNumber> notes, const Step* step) {
    return std::find(notes.begin(), notes.end(), *step->note) != notes.end();
}

/// Where fewer than three are left, any will do.
void keepWhere(std::vector<Step*>& candidates, auto&& wanted) {
    std::vector<Step*> kept;
    std::copy_if(candidates.begin(), candidates.end(), std::back_inserter(kept), wanted);
    if (kept.size() >= kNotesOfTrial) candidates = std::move(kept);
}

/// A trial that says nothing goes on with the same notes, for goes add up. One that says the other way is asked of
/// others than the first three, and goes on with those until they say something too.
void keepForNextGo(const TrialAnswer& said, std::vector<Step*>& candidates) {
    std::span<const NoteNumber> again = said.notes;
    if (said.says == TrialSays::otherWay && again.size() >= kNotesOfTrial) {
        const std::span<const NoteNumber> first = again.first(kNotesOfTrial);
        keepWhere(candidates, [&](const Step* step) { return !among(first, step); });
        again = again.subspan(kNotesOfTrial);
    }
    keepWhere(candidates, [&](const Step* step) { return among(again, step); });
}

} // namespace

std::vector<Trial> chooseTrials(const Bench& bench, std::vector<Step>& steps) {
    std::vector<Trial> trials;
    for (const Operation& operation : operations()) {
        const double amount = firstTrialOf(operation.id, bench.piano());
        if (amount <= 0 || unitOf(operation.id, bench.piano()) != AmountUnit::turn) continue;
        std::vector<Step*> unlearned;
        for (Step& step : steps) {
            if (step.operation != operation.id || !step.note || step.amount) continue;
            const Response* response = bench.answers.at(operation.id, *step.note);
            if (response && !response->learned) unlearned.push_back(&step);
        }
        if (unlearned.empty()) continue;
        const TrialAnswer* said = saidOf(bench, operation.id);
        if (said && said->says == TrialSays::doesNotAnswer) continue; // thread, glue or the wrong screw: it waits
        // Notes that have at least the trial's first guess to go; all of them where none has.
        const auto toGo = [&](const Step* step) {
            return step->now && step->aim ? std::abs(toTrade(*step->now, row(step->aimDimension).kind) - *step->aim)
                                          : 0.0;
        };
        const auto farEnough = [&](const Step* step) {
            const Response* response = bench.answers.at(operation.id, *step->note);
            return toGo(step) >= 0.5 * amount * std::abs(response->effects.front().perUnit);
        };
        std::vector<Step*> candidates;
        std::copy_if(unlearned.begin(), unlearned.end(), std::back_inserter(candidates), farEnough);
        if (candidates.size() < 3) candidates = unlearned;
        if (said) keepForNextGo(*said, candidates);
        // One way for all three: a trial the other way would teach slack of the thread as well.
        const auto ahead = std::count_if(candidates.begin(), candidates.end(), [&](const Step* step) {
            return step->direction == candidates.front()->direction;
        });
        const Direction other = candidates.front()->direction;
        const bool most = 2 * ahead >= static_cast<std::ptrdiff_t>(candidates.size());
        std::erase_if(candidates, [&](const Step* step) { return (step->direction == other) != most; });
        Trial trial{operation.id, {}, amount, candidates.front()->direction};
        for (const double place : {0.25, 0.5, 0.75}) {
            const double wanted = 1 + place * (bench.piano().notes - 1);
            Step* nearest = nullptr;
            for (Step* step : candidates) {
                if (step->amount) continue; // chosen already
                if (!nearest || std::abs(step->note->value - wanted) < std::abs(nearest->note->value - wanted))
                    nearest = step;
            }
            if (!nearest) continue;
            nearest->amount = *nearest->positive ? amount : -amount;
            nearest->go = nearest->amount;
            nearest->why = "trial";
            trial.notes.push_back(*nearest->note);
        }
        std::sort(trial.notes.begin(), trial.notes.end());
        trials.push_back(std::move(trial));
    }
    return trials;
}

void putInOrder(const Bench& bench, std::vector<Step>& steps) {
    const ActionKind kind = bench.piano().action;
    std::vector<std::size_t> place(operations().size());
    for (const Operation& operation : operations())
        place[operation.id.row] = placeInWork(operation.id, kind);
    const auto first = [](const Step& step) { return step.notes.empty() ? 0 : step.notes.front().value; };
    const auto section = [&](const Step& step) {
        return bench.options.stage == Stage::sections && step.note ? sectionIndexOf(*step.note, bench.piano()) : 0;
    };
    // Sharps are set over their naturals.
    const auto overNaturals = [](const Step& step) { return step.aimDimension == dimension::sharpHeight; };
    const auto rank = [&](const Step& step) {
        return std::tuple(section(step), place[step.operation.row], step.note.has_value(), step.operation.row,
                          overNaturals(step), first(step), step.id);
    };
    std::stable_sort(steps.begin(), steps.end(), [&](const Step& a, const Step& b) { return rank(a) < rank(b); });
    std::vector<std::vector<std::size_t>> byNote(static_cast<std::size_t>(bench.piano().notes) + 1);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        Step& step = steps[i];
        step.order = static_cast<int>(i) + 1;
        step.after.clear();
        const auto waitsFor = [&](NoteNumber from, Cell cell) {
            for (const std::size_t j : byNote[static_cast<std::size_t>(from.value)])
                if (disturbs(steps[j].operation, from, cell, bench.piano()) &&
                    std::find(step.after.begin(), step.after.end(), steps[j].id) == step.after.end())
                    step.after.push_back(steps[j].id);
        };
        for (const NoteNumber note : step.notes) {
            waitsFor(note, {note, step.aimDimension});
            if (step.note && overNaturals(step))
                for (const NoteNumber natural : neighbouringNaturals(note, bench.piano()))
                    waitsFor(natural, {note, step.aimDimension});
        }
        for (const NoteNumber note : step.notes)
            byNote[static_cast<std::size_t>(note.value)].push_back(i);
    }
}

double minutesOf(const Bench& bench, std::span<const Step> steps) {
    constexpr std::size_t kManyKeys = 21;
    double minutes = 0;
    std::array<bool, kAccesses> reached{};
    std::size_t keys = 0;
    for (const Step& step : steps) {
        minutes += step.minutes;
        reached.at(static_cast<std::size_t>(step.access)) = true;
        if (step.access == Access::oneKey) ++keys;
    }
    if (keys >= kManyKeys) reached[static_cast<std::size_t>(Access::keysOff)] = true;
    for (std::size_t i = 0; i < reached.size(); ++i)
        if (reached[i]) minutes += minutesToReach(static_cast<Access>(i), bench.piano())[0];
    return minutes;
}

void keepWithin(const Bench& bench, std::vector<Step>& steps, double minutes) {
    // A bundle is what belongs together: one note's steps, or one common move.
    struct Bundle {
        std::vector<std::size_t> steps;
        double minutes = 0, gain = 0;
        bool common = false;
    };
    std::map<int, Bundle> byNote;
    std::vector<Bundle> bundles;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        Bundle common;
        Bundle& bundle = steps[i].note ? byNote[steps[i].note->value] : common;
        bundle.steps.push_back(i);
        bundle.minutes += steps[i].minutes;
        for (const NoteNumber note : steps[i].notes)
            for (const DimensionId served : steps[i].serves)
                if (bench.stand(note).asked[served.row]) bundle.gain += 1;
        if (!steps[i].note) {
            bundle.common = true;
            bundles.push_back(std::move(bundle));
        }
    }
    for (auto& [note, bundle] : byNote)
        bundles.push_back(std::move(bundle));
    std::stable_sort(bundles.begin(), bundles.end(), [](const Bundle& a, const Bundle& b) {
        if (a.common != b.common) return a.common;
        return a.gain * b.minutes > b.gain * a.minutes;
    });
    std::vector<bool> kept(steps.size(), false);
    std::vector<Step> chosen;
    for (const Bundle& bundle : bundles) {
        std::vector<Step> tried = chosen;
        for (const std::size_t i : bundle.steps)
            tried.push_back(steps[i]);
        if (minutesOf(bench, tried) > minutes) continue;
        chosen = std::move(tried);
        for (const std::size_t i : bundle.steps)
            kept[i] = true;
    }
    std::vector<Step> left;
    for (std::size_t i = 0; i < steps.size(); ++i)
        if (kept[i]) left.push_back(std::move(steps[i]));
    steps = std::move(left);
}

} // namespace hammerline
