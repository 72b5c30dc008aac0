// What this piano answered to what was done (computation 8).
#include "core/history/learning.h"

#include "core/history/states.h"
#include "core/stats/distribution.h"
#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

/// One before and after of the same note with an amount: `expected` is the change of the served dimension that the
/// first guess predicts for that amount, `seen` the change that was read, less what the other work predicts.
struct Pair {
    double expected{}, seen{};
    double variance{};   // of `seen` by the gauge, before and after
    double beforeBias{}; // variance of a before-reading the amount was computed from; 0: none
    bool out = false;
};

struct Fit {
    double factor{}, sd{}; // answer over first guess
    int pairs = 0;
};

/// seen = factor x expected through the origin: factor = sum(e s)/sum(e^2), SE = s/sqrt(sum e^2), s^2 = SSres/(n-1)
/// (NIST StRD NoInt1, NoInt2), pooled with the gauge's own variance counted as two more residuals, so that three trials
/// that agree by chance do not pretend to certainty.
/// An amount computed from the reading that also stands in `seen` shares its error: E[sum(e s)] is too large by
/// V_before / factor in use for each such pair. The factor in use is 1 here: amounts are computed from a lone reading
/// only before anything is learned; later ones come from weighed states, whose error does not lean on the reading.
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

/// Everything a pass pair needs: the states before the work and the plain readings after it.
class Lessons {
public:
    Lessons(const PianoRecord& record, std::array<double, 2> ratio, std::span<const Response> guesses,
            std::span<const Response> believed)
        : m_record(record), m_guesses(guesses), m_answers(believed) {
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
        // A trial of one fixed amount was not computed from any reading.
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
            const Response* response = m_answers.of(done.operation, colourOf(from, m_record.piano));
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
        const KeyColour colour = colourOf(note, m_record.piano);
        const Response* guess = m_guesses.of(operation, colour);
        if (!guess || guess->effects.empty()) return std::nullopt;
        const DimensionId served = guess->effects.front().dimension;
        double amount = 0, others = 0;
        bool here = false;
        for (const Done& done : m_record.done) {
            if (done.pass != pass) continue;
            const auto change = predicted(done, {note, served});
            if (!change) return std::nullopt;
            others += *change;
            const auto own = done.operation == operation ? amountAt(done, note) : std::nullopt;
            if (!own) continue;
            amount += *own;
            here = true;
            if (const Response* believed = m_answers.of(operation, colour))
                others -= believed->effects.front().perUnit * *own; // its own is the question
        }
        if (!here || amount == 0) return std::nullopt;
        const Known& was = before[static_cast<std::size_t>(note.value) - 1].of(served);
        const auto is = readAfter({note, served}, pass);
        if (!was.known || was.expected || !is) return std::nullopt;
        m_amounts.push_back(amount);
        return Pair{guess->effects.front().perUnit * amount, is->value - was.value - others,
                    was.variance + is->variance, was.weighed ? 0 : was.variance, false};
    }

    const PianoRecord& m_record;
    Answers m_guesses, m_answers;
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

} // namespace

std::vector<Response> learnedResponses(const PianoRecord& record, std::array<double, 2> ratio) {
    const std::vector<Response> guesses = firstResponses(record.piano, ratio);
    std::vector<Response> learned = guesses;
    if (record.done.empty()) return learned;
    // Twice: what the other operations did between the readings is predicted better once they are learned too.
    for (int round = 0; round < 2; ++round) {
        const Lessons lessons(record, ratio, guesses, learned);
        std::vector<Response> next = guesses;
        for (const Operation& operation : operations()) {
            if (!applies(operation.id, record.piano) || unitOf(operation.id, record.piano) == AmountUnit::none)
                continue;
            std::vector<Pair> pairs = lessons.pairsOf(operation.id);
            Fit fit = answerFit(pairs);
            leaveOutliersOut(pairs, fit.factor);
            fit = answerFit(pairs);
            if (fit.pairs < kFewestPairs) continue;
            for (std::size_t i = 0; i < next.size(); ++i)
                if (next[i].operation == operation.id) scale(next[i], weighed(fit, guesses[i]));
        }
        learned = std::move(next);
    }
    return learned;
}

} // namespace hammerline
