// What this piano answered to what was done (computation 8, 19).
#include "core/history/learning.h"

#include "core/history/learned.h"
#include "core/stats/distribution.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr int kFewestNotes = 3;     // fewer are no lesson
constexpr int kFewestOfSection = 8; // notes that a section's own answer takes
constexpr double kSurely = 0.9995;  // two-sided 99.9 %: every section of every operation is asked
constexpr double kApart = 0.15;     // and so far apart that it matters
constexpr double kGeometry = 0.15;  // what punchings and pads may answer beside the arms
constexpr double kNumber = 0.5;     // of the answer: a wider half interval is no number of turns

/// First guess and lesson weighed by their precision; a lesson that contradicts the guess (another sign, a pitch
/// outside its band) stands alone.
AnswerFit weighedWithGuess(const AnswerFit& fit, double tau) {
    const double together = std::hypot(tau, fit.sd);
    if (tau <= 0 || fit.sd <= 0 || std::abs(fit.factor - 1) > 2 * together) return fit;
    const double guess = 1 / (tau * tau), lesson = 1 / (fit.sd * fit.sd);
    return {(guess + lesson * fit.factor) / (guess + lesson), 1 / std::sqrt(guess + lesson), fit.notes};
}

/// The least that a sound screw gives, over the first guess: by the customary band, however narrow that of the others.
double leastOf(const Response& guess) {
    const Effect& customary = guess.others ? guess.others->customary : guess.effects.front();
    const double least = std::max(0.0, std::abs(customary.perUnit) - customary.sd);
    return least / std::abs(guess.effects.front().perUnit);
}

double tauOf(const Response& guess) {
    const Effect& first = guess.effects.front();
    return std::abs(first.sd / first.perUnit);
}

/// Degrees of freedom of an interval: the gauge is known beside the notes.
double halfWidth(const AnswerFit& fit) {
    return studentQuantile(0.975, fit.notes + 1) * fit.sd;
}

bool isNumber(const AnswerFit& fit) {
    return 1.96 * fit.sd < kNumber * std::abs(fit.factor);
}

/// Effects on checking follow the aftertouch, not the screw's pitch: they keep their guess's relative uncertainty.
void scale(Response& response, const AnswerFit& fit) {
    const Effect guess = response.effects.front();
    for (Effect& effect : response.effects) {
        const bool follows = effect.dimension == dimension::checking && guess.dimension != dimension::checking;
        effect.sd = follows ? effect.sd * std::abs(fit.factor) : std::abs(effect.perUnit) * fit.sd;
        effect.perUnit *= fit.factor;
    }
    response.opposite = fit.factor < 0;
    response.pairs = fit.notes;
    const double half = halfWidth(fit);
    const double low = guess.perUnit * (fit.factor - half), high = guess.perUnit * (fit.factor + half);
    response.low95 = std::min(low, high);
    response.high95 = std::max(low, high);
    response.learned = isNumber(fit);
}

/// The looks of one section where they answer otherwise than those of the other sections together.
std::optional<AnswerFit> ownAnswer(const std::vector<LooksAtNote>& tried, NoteRange section, double guess) {
    std::vector<LooksAtNote> own, rest;
    for (const LooksAtNote& each : tried)
        (section.contains(each.note) ? own : rest).push_back(each);
    const AnswerFit here = fitAnswer(own, guess), there = fitAnswer(rest, guess);
    if (here.notes < kFewestOfSection || there.notes < kFewestNotes) return std::nullopt;
    const double difference = std::abs(here.factor - there.factor);
    const double sd = std::hypot(here.sd, there.sd);
    const bool sure = difference > sd * studentQuantile(kSurely, std::min(here.notes, there.notes) - 1);
    const bool matters = difference > kApart * std::abs(there.factor);
    return sure && matters ? std::optional(here) : std::nullopt;
}

class Learning {
public:
    Learning(const PianoRecord& record, const std::vector<Response>& guesses, const std::vector<Response>& believed,
             double ratio)
        : m_record(record), m_guesses(guesses), m_believed(believed, record.piano), m_ratio(ratio) {}

    Learned all() {
        m_out.responses = m_guesses;
        for (const Operation& operation : operations())
            if (applies(operation.id, m_record.piano) && unitOf(operation.id, m_record.piano) != AmountUnit::none)
                one(operation.id);
        return std::move(m_out);
    }

private:
    void one(OperationId operation) {
        const std::vector<LooksAtNote> tried = looksOf(m_record, operation, m_believed, m_ratio);
        const Response* guess = guessOf(operation);
        if (tried.size() < kFewestNotes || !guess) return;
        const double perUnit = guess->effects.front().perUnit, tau = tauOf(*guess);
        TrialAnswer answer = judgeTrial(operation, tried, perUnit, leastOf(*guess));
        const AnswerFit fit = fitAnswer(tried, perUnit);
        const bool geometry = isGeometry(operation, m_record.piano);
        answer.arms = geometry && saysSomething(fit) && std::abs(fit.factor - 1) - 2.58 * fit.sd > kGeometry;
        if (answer.says == TrialSays::answers || answer.says == TrialSays::turned) {
            const AnswerFit weighed = weighedWithGuess(fit, tau);
            answer.known = isNumber(weighed);
            teach(operation, weighed, geometry);
            if (!geometry) teachSections(operation, tried, perUnit);
        }
        m_out.trials.push_back(std::move(answer));
    }

    const Response* guessOf(OperationId operation) const {
        const auto found = std::find_if(m_guesses.begin(), m_guesses.end(), [&](const Response& each) {
            return each.operation == operation && !each.effects.empty();
        });
        return found == m_guesses.end() ? nullptr : &*found;
    }

    void teach(OperationId operation, AnswerFit fit, bool geometry) {
        if (geometry) fit.factor = std::clamp(fit.factor, 1 - kGeometry, 1 + kGeometry);
        for (Response& response : m_out.responses)
            if (response.operation == operation && !response.section) scale(response, fit);
    }

    void teachSections(OperationId operation, const std::vector<LooksAtNote>& tried, double perUnit) {
        const std::vector<Section> sections = sectionsOf(m_record.piano);
        for (std::size_t s = 0; s < sections.size(); ++s) {
            const auto own = ownAnswer(tried, sections[s].range, perUnit);
            if (!own || own->factor < 0) continue;
            for (const Response& guess : m_guesses) {
                if (guess.operation != operation) continue;
                Response response = guess;
                response.section = s;
                scale(response, weighedWithGuess(*own, tauOf(guess)));
                m_out.responses.push_back(std::move(response));
            }
        }
    }

    const PianoRecord& m_record;
    const std::vector<Response>& m_guesses;
    Answers m_believed;
    double m_ratio;
    Learned m_out;
};

} // namespace

bool isGeometry(OperationId operation, const Piano& piano) {
    const bool bent = operation == operation::checkBend;
    return unitOf(operation, piano) == AmountUnit::mm && !bent;
}

Learned learn(const PianoRecord& record, std::array<double, 2> ratio) {
    const std::vector<Response> guesses = firstResponses(record.piano, ratio);
    Learned learned{guesses, {}};
    if (record.done.empty()) return learned;
    // Twice: what the other operations did between the readings is predicted better once they are learned too.
    for (int round = 0; round < 2; ++round)
        learned = Learning(record, guesses, learned.responses, ratio[0]).all();
    return learned;
}

std::vector<Response> learnedResponses(const PianoRecord& record, std::array<double, 2> ratio) {
    return learn(record, ratio).responses;
}

} // namespace hammerline
