// What this piano answered to what was done (computation 8).
#include "core/history/learning.h"

#include "core/history/states.h"
#include "core/stats/distribution.h"
#include "core/stats/robust.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

/// One before and after of the same note with an amount: `expected` is the change of the served dimension that the
/// first guess predicts for that amount, `seen` the change that was read, less what the other work predicts.
struct Pair {
    NoteNumber note;
    double expected{}, seen{};
    double variance{};   // of `seen` by the gauge, before and after
    double beforeBias{}; // what the error of a before-reading that the amount was computed from adds to e s; 0: none
    bool out = false;
};

struct Fit {
    double factor{}, sd{}; // answer over first guess
    int pairs = 0;
};

/// seen = factor x expected through the origin: factor = sum(e s)/sum(e^2), SE = s/sqrt(sum e^2), s^2 = SSres/(n-1)
/// (NIST StRD NoInt1, NoInt2), pooled with the gauge's own variance counted as two more residuals, so that three trials
/// that agree by chance do not pretend to certainty.
/// An amount computed from the reading b = B + error of variance V that also stands in `seen` shares that error. With
/// e(b) the amount by the plan's rule, E[sum(e s)] = factor sum(e^2) - sum(E[e error]), and for a Gaussian error
/// E[e error] = V E[de/db] (Stein's lemma). The plan aims at a fixed value through the factor f in use, e = (aim -
/// b)/f: de/db = -1/f, so each such pair adds V/f, which is taken off. An amount at the cap of a go, a trial of a fixed
/// amount and one that a hand chose do not depend on the reading: they add nothing. Nor do amounts from a weighed
/// state, the error of which does not lean on the value itself.
Fit answerFit(const std::vector<Pair>& pairs) {
    double cross = 0, squares = 0, gauge = 0;
    Fit fit;
    for (const Pair& pair : pairs) {
        if (pair.out) continue;
        cross += pair.expected * pair.seen - pair.beforeBias;
        squares += pair.expected * pair.expected;
        gauge += pair.variance;
        ++fit.pairs;
    }
    if (fit.pairs == 0 || squares <= 0) return {};
    fit.factor = cross / squares;
    double residuals = 0;
    for (const Pair& pair : pairs)
        if (!pair.out) residuals += std::pow(pair.seen - fit.factor * pair.expected, 2);
    const double variance = (residuals + 2 * gauge / fit.pairs) / (fit.pairs - 1 + 2);
    fit.sd = std::sqrt(variance / squares);
    return fit;
}

/// Pairs whose residual lies beyond 3.5 by the modified z-score (Iglewicz and Hoaglin) are left out.
void leaveOutliersOut(std::vector<Pair>& pairs, double factor) {
    if (pairs.size() < 5) return;
    std::vector<double> residuals;
    for (const Pair& pair : pairs)
        residuals.push_back(pair.seen - factor * pair.expected);
    const double middle = *median(residuals);
    std::vector<double> distances;
    for (const double residual : residuals)
        distances.push_back(std::abs(residual - middle));
    const double mad = *median(distances);
    if (mad <= 0) return;
    for (std::size_t i = 0; i < pairs.size(); ++i)
        pairs[i].out = 0.6745 * distances[i] / mad > 3.5;
}

constexpr double kLeastFactor = 0.25; // answers weaker than this are a fault of the screw, not a belief

/// What the frozen plans said of the steps that were ticked, and of how the piano answers; each plan is read when it is
/// first asked for.
class FrozenPlans {
public:
    struct Planned {
        std::optional<double> amount, go;
        bool trial = false;
    };
    struct Answer {
        std::string operation;
        std::optional<int> keys;
        std::optional<std::size_t> section;
        double perUnit{}; // of what the operation is for
    };
    struct Content {
        std::map<std::string, Planned> steps;
        std::vector<Answer> answers;
    };
    explicit FrozenPlans(const PianoRecord& record) : m_record(record) {}

    /// Null where the plan is not kept: nothing is known of its steps.
    const Content* of(const std::string& uuid) {
        const auto kept = std::find_if(m_record.plans.begin(), m_record.plans.end(),
                                       [&](const FrozenPlan& plan) { return plan.uuid == uuid; });
        if (kept == m_record.plans.end()) return nullptr;
        const auto [found, fresh] = m_plans.try_emplace(uuid);
        if (fresh) found->second = read(kept->content);
        return &found->second;
    }

private:
    static Content read(const std::string& text) {
        Content out;
        const auto plan = nlohmann::json::parse(text, nullptr, false);
        if (!plan.is_object()) return out;
        try {
            for (const auto& step : plan.value("steps", nlohmann::json::array())) {
                const auto number = [&](const char* name) {
                    return step.at(name).is_null() ? std::nullopt : std::optional(step.at(name).get<double>());
                };
                out.steps[step.at("id")] = {number("amount"), number("go"), step.at("why") == "trial"};
            }
            for (const auto& each : plan.value("responses", nlohmann::json::array())) {
                Answer answer{each.at("operation"), {}, {}, each.at("effects").at(0).at(1)};
                if (!each.at("keys").is_null()) answer.keys = each.at("keys").get<int>();
                if (each.contains("section") && !each["section"].is_null()) answer.section = each["section"];
                out.answers.push_back(std::move(answer));
            }
        } catch (const nlohmann::json::exception&) { // written by no program of ours: what was read of it holds
        }
        return out;
    }

    const PianoRecord& m_record;
    std::map<std::string, Content> m_plans; // by uuid
};

/// Everything a pass pair needs: the states before the work and the plain readings after it.
class Lessons {
public:
    Lessons(const PianoRecord& record, std::array<double, 2> ratio, std::span<const Response> guesses,
            std::span<const Response> believed, FrozenPlans& frozen)
        : m_record(record), m_guesses(guesses, record.piano), m_answers(believed, record.piano), m_frozen(frozen) {
        std::vector<const Pass*> passes;
        for (const Pass& pass : record.passes) {
            passes.push_back(&pass);
            const bool worked = std::any_of(record.done.begin(), record.done.end(),
                                            [&](const Done& d) { return d.pass == pass.number; });
            if (!worked) continue;
            const StateQuestion question{
                &record,
                passes,
                {RatioOf{ratio[0], kUsualSpread * ratio[0]}, RatioOf{ratio[1], kUsualSpread * ratio[1]}}};
            m_before[pass.number] = noteStates(question, m_answers, false);
        }
    }

    std::vector<Pair> pairsOf(OperationId operation) const {
        std::vector<Pair> pairs;
        for (const auto& [pass, before] : m_before)
            for (int n = 1; n <= m_record.piano.notes; ++n)
                if (const auto pair = pairAt(operation, pass, before, {n})) pairs.push_back(*pair);
        // Without the plan's word for it: a round of one fixed amount was a trial.
        const bool fixed = !m_amounts.empty() && std::all_of(m_amounts.begin(), m_amounts.end(), [&](double a) {
            return std::abs(std::abs(a) - std::abs(m_amounts.front())) < 1e-9;
        });
        if (fixed)
            for (Pair& pair : pairs)
                pair.beforeBias = 0;
        m_amounts.clear();
        return pairs;
    }

private:
    /// Whether the amount of a done thing was reckoned by the plan from the reading before it: the step's own amount,
    /// no trial, below the cap of one go. What was typed in its place, or done without a step, a hand chose.
    bool fromReading(const Done& done, double amount) const {
        constexpr double kSame = 1e-9;
        if (done.step.empty() || done.toAim) return false;
        const double cap = capOf(done.operation, m_record.piano);
        if (cap > 0 && std::abs(amount) >= cap - kSame) return false;
        const auto* plan = m_frozen.of(done.plan);
        if (!plan) return true;
        const auto step = plan->steps.find(done.step);
        if (step == plan->steps.end() || step->second.trial) return false;
        const auto same = [&](const std::optional<double>& each) { return each && std::abs(*each - amount) < kSame; };
        return same(step->second.amount) || same(step->second.go) || !done.amounts.empty();
    }

    /// The answer that a plan reckoned the amount with, over the first guess. What is not kept was the first guess:
    /// later amounts come from weighed states.
    double factorInUse(const Done& done, NoteNumber note, double guess) const {
        const auto* plan = m_frozen.of(done.plan);
        if (!plan) return 1;
        const int colour = static_cast<int>(colourOf(note, m_record.piano));
        const std::size_t section = sectionIndexOf(note, m_record.piano);
        double factor = 1;
        for (const FrozenPlans::Answer& each : plan->answers) // a section's own answer stands behind the piano's
            if (each.operation == key(done.operation) && each.keys.value_or(colour) == colour &&
                each.section.value_or(section) == section)
                factor = each.perUnit / guess;
        return std::abs(factor) < kLeastFactor ? std::copysign(kLeastFactor, factor) : factor;
    }

    bool touches(const Done& done, Cell cell) const {
        return std::any_of(done.notes.begin(), done.notes.end(),
                           [&](NoteNumber note) { return disturbs(done.operation, note, cell, m_record.piano); });
    }

    /// What done work is predicted to have changed the served reading of a note by, seen from that note: its own
    /// effects, and for a sharp's height what the naturals beside it rose. None: set to its aim there, which hides it.
    std::optional<double> predicted(const Done& done, Cell cell) const {
        double change = 0;
        const auto add = [&](NoteNumber from, DimensionId dimension, double share) {
            const auto amount = amountAt(done, from);
            const Response* response = m_answers.at(done.operation, from);
            if (!amount || !response) return;
            for (const Effect& effect : response->effects)
                if (effect.dimension == dimension) change += share * effect.perUnit * *amount;
        };
        if (done.toAim) return touches(done, cell) ? std::nullopt : std::optional(0.0);
        add(cell.note, cell.dimension, 1);
        if (cell.dimension == dimension::sharpHeight) {
            const std::vector<NoteNumber> naturals = neighbouringNaturals(cell.note, m_record.piano);
            for (const NoteNumber natural : naturals)
                add(natural, dimension::keyHeight, -1.0 / static_cast<double>(naturals.size()));
        }
        return change;
    }

    /// The pass up to this number that read the cell last.
    const Pass* lastRead(Cell cell, int upTo) const {
        const Pass* found = nullptr;
        for (const Pass& each : m_record.passes)
            if (each.number <= upTo && each.at(cell)) found = &each;
        return found;
    }

    /// The first reading of the cell after the work of a pass, and before more work of a later pass on it.
    std::optional<Told> readAfter(Cell cell, int pass) const {
        for (const Pass& later : m_record.passes) {
            if (later.number <= pass) continue;
            if (const Measured* measured = later.at(cell)) {
                if (const Pass* before = lastRead(cell, pass);
                    before && !otherMethod(cell.dimension, *before, later).empty())
                    return std::nullopt;
                const double u = toTrade(uncertaintyOf(cell.dimension, m_record.piano), row(cell.dimension).kind);
                if (measured->value()) return tell(cell.dimension, *measured, u);
            }
            for (const Done& done : m_record.done)
                if (done.pass == later.number && touches(done, cell)) return std::nullopt;
        }
        return std::nullopt;
    }

    std::optional<Pair> pairAt(OperationId operation, int pass, const std::vector<NoteState>& before,
                               NoteNumber note) const {
        const Response* guess = m_guesses.at(operation, note);
        if (!guess || guess->effects.empty()) return std::nullopt;
        const DimensionId served = guess->effects.front().dimension;
        const Response* believed = m_answers.at(operation, note);
        double amount = 0, others = 0;
        bool here = false, reckoned = false;
        double inUse = 1;
        for (const Done& done : m_record.done) {
            if (done.pass != pass) continue;
            const auto change = predicted(done, {note, served});
            if (!change) return std::nullopt;
            others += *change;
            const auto own = done.operation == operation ? amountAt(done, note) : std::nullopt;
            if (!own) continue;
            amount += *own;
            here = true;
            if (fromReading(done, *own)) {
                reckoned = true;
                inUse = factorInUse(done, note, guess->effects.front().perUnit);
            }
            if (believed) others -= believed->effects.front().perUnit * *own; // its own is the question
        }
        if (!here || amount == 0) return std::nullopt;
        const Known& was = before[static_cast<std::size_t>(note.value) - 1].of(served);
        const auto is = readAfter({note, served}, pass);
        if (!was.known || was.expected || !is) return std::nullopt;
        m_amounts.push_back(amount);
        const double first = guess->effects.front().perUnit;
        const bool leans = reckoned && !was.weighed;
        return Pair{note,
                    first * amount,
                    is->value - was.value - others,
                    was.variance + is->variance,
                    leans ? was.variance / inUse : 0,
                    false};
    }

    const PianoRecord& m_record;
    Answers m_guesses, m_answers;
    FrozenPlans& m_frozen;
    std::map<int, std::vector<NoteState>> m_before;
    mutable std::vector<double> m_amounts;
};

/// First guess and lesson weighed by their precision; a lesson that contradicts the guess (another sign, a pitch
/// outside its band) stands alone.
Fit weighed(const Fit& fit, const Response& guess) {
    const Effect& first = guess.effects.front();
    const double tau = std::abs(first.sd / first.perUnit);
    const double together = std::hypot(tau, fit.sd);
    if (tau <= 0 || std::abs(fit.factor - 1) > 2 * together) return fit;
    const double guessWeight = 1 / (tau * tau), fitWeight = 1 / (fit.sd * fit.sd);
    return {(guessWeight + fitWeight * fit.factor) / (guessWeight + fitWeight), 1 / std::sqrt(guessWeight + fitWeight),
            fit.pairs};
}

void scale(Response& response, const Fit& fit) {
    const Effect guess = response.effects.front();
    for (Effect& effect : response.effects) {
        if (effect.dimension == dimension::checking && response.effects.front().dimension != dimension::checking) {
            effect.perUnit *= fit.factor;
            effect.sd *= std::abs(fit.factor);
            continue;
        }
        effect.sd = std::abs(effect.perUnit) * fit.sd;
        effect.perUnit *= fit.factor;
    }
    response.learned = true;
    response.opposite = fit.factor < 0;
    response.pairs = fit.pairs;
    const double t = studentQuantile(0.975, fit.pairs + 1);
    const double low = guess.perUnit * (fit.factor - t * fit.sd), high = guess.perUnit * (fit.factor + t * fit.sd);
    response.low95 = std::min(low, high);
    response.high95 = std::max(low, high);
}

// Fewer pairs are no lesson: a trial is three notes (bench-practice 2.5).
constexpr int kFewestPairs = 3;
// A section has a lesson of its own from so many pairs on (computation 8), where it differs from the rest beyond
// chance: at 99 % of Student's t, since every section of every operation is asked.
constexpr int kFewestOfSection = 5;
constexpr double kSurely = 0.995;

Fit fitOf(std::vector<Pair> pairs) {
    Fit fit = answerFit(pairs);
    leaveOutliersOut(pairs, fit.factor);
    return answerFit(pairs);
}

/// The fit of one section where it answers otherwise than the other sections together.
std::optional<Fit> ownFit(const std::vector<Pair>& pairs, NoteRange section) {
    std::vector<Pair> own, rest;
    for (const Pair& pair : pairs)
        (section.contains(pair.note) ? own : rest).push_back(pair);
    if (static_cast<int>(own.size()) < kFewestOfSection) return std::nullopt;
    const Fit here = fitOf(own), there = fitOf(rest);
    if (here.pairs < kFewestOfSection || there.pairs < kFewestPairs) return std::nullopt;
    const double apart = std::abs(here.factor - there.factor) / std::hypot(here.sd, there.sd);
    if (apart <= studentQuantile(kSurely, here.pairs + there.pairs - 2)) return std::nullopt;
    return here;
}

/// The answers of one operation, the piano's in place and those of sections that differ behind.
void learn(OperationId operation, const std::vector<Pair>& pairs, const Piano& piano,
           const std::vector<Response>& guesses, std::vector<Response>& next) {
    const Fit fit = fitOf(pairs);
    if (fit.pairs < kFewestPairs) return;
    for (std::size_t i = 0; i < guesses.size(); ++i)
        if (guesses[i].operation == operation) scale(next[i], weighed(fit, guesses[i]));
    const std::vector<Section> sections = sectionsOf(piano);
    for (std::size_t s = 0; s < sections.size(); ++s) {
        const auto own = ownFit(pairs, sections[s].range);
        if (!own) continue;
        for (const Response& guess : guesses) {
            if (guess.operation != operation) continue;
            Response response = guess;
            response.section = s;
            scale(response, weighed(*own, guess));
            next.push_back(std::move(response));
        }
    }
}

} // namespace

std::vector<Response> learnedResponses(const PianoRecord& record, std::array<double, 2> ratio) {
    const std::vector<Response> guesses = firstResponses(record.piano, ratio);
    std::vector<Response> learned = guesses;
    if (record.done.empty()) return learned;
    FrozenPlans frozen(record);
    // Twice: what the other operations did between the readings is predicted better once they are learned too.
    for (int round = 0; round < 2; ++round) {
        const Lessons lessons(record, ratio, guesses, learned, frozen);
        std::vector<Response> next = guesses;
        for (const Operation& operation : operations()) {
            if (!applies(operation.id, record.piano) || unitOf(operation.id, record.piano) == AmountUnit::none)
                continue;
            learn(operation.id, lessons.pairsOf(operation.id), record.piano, guesses, next);
        }
        learned = std::move(next);
    }
    return learned;
}

} // namespace hammerline
