#include "core/history/trial.h"

#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kSomething = 2.58; // two-sided 99 %
constexpr int kMostGoes = 3, kWholePass = 12;
constexpr double kShare = 0.02; // of the answer: what a screw's own pitch is uncertain by, whatever the count

struct CentredSums {
    double cross = 0, squares = 0, variance = 0; // centred; mean variance of a look
    double residual(double factor) const { return (cross - factor * squares) / std::sqrt(squares); }
};

CentredSums centredSums(const LooksAtNote& at, double guess) {
    const auto n = static_cast<double>(at.looks.size());
    double amount = 0, value = 0;
    CentredSums sums;
    for (const LookAfterTurns& look : at.looks) {
        amount += look.amount * guess / n;
        value += look.value / n;
        sums.variance += look.variance / n;
    }
    for (const LookAfterTurns& look : at.looks) {
        const double expected = look.amount * guess - amount;
        sums.cross += expected * (look.value - value);
        sums.squares += expected * expected;
    }
    return sums;
}

AnswerFit fitSums(const std::vector<CentredSums>& all) {
    double cross = 0, squares = 0, gauge = 0;
    for (const CentredSums& each : all) {
        cross += each.cross;
        squares += each.squares;
        gauge += each.variance * each.squares;
    }
    if (squares <= 0) return {};
    AnswerFit fit{cross / squares, 0, static_cast<int>(all.size())};
    double scatter = 0;
    for (const CentredSums& each : all)
        scatter += std::pow(each.cross - fit.factor * each.squares, 2);
    const double n = fit.notes;
    const double byNotes = n > 1 ? n / (n - 1) * scatter / (squares * squares) : 0;
    const double byGauge = gauge / (squares * squares);
    const double variance = n < kWholePass ? std::max(byNotes, byGauge) : byNotes;
    fit.sd = std::sqrt(variance + std::pow(kShare * fit.factor, 2));
    return fit;
}

/// Two sets of three notes each, the first tried and those after them, both saying the other way.
bool bothSayOtherWay(std::span<const LooksAtNote> all, double guess) {
    if (all.size() < 2 * kNotesOfTrial) return false;
    // Three and the others where the second set is a trial; where a whole pass was worked, its halves by turns.
    const std::size_t first = std::max(kNotesOfTrial, std::min(all.size() / 2, all.size() - kNotesOfTrial));
    const auto against = [&](std::span<const LooksAtNote> set) {
        const AnswerFit fit = fitAnswer(set, guess);
        return saysSomething(fit) && fit.factor < 0;
    };
    return against(all.first(first)) && against(all.subspan(first));
}

} // namespace

std::string_view key(TrialSays says) {
    constexpr std::array<std::string_view, 5> kKeys = {"says-nothing", "answers", "other-way", "turned",
                                                       "does-not-answer"};
    return kKeys[static_cast<std::size_t>(says)];
}

AnswerFit fitAnswer(std::span<const LooksAtNote> tried, double guess) {
    std::vector<CentredSums> sums;
    for (const LooksAtNote& each : tried)
        if (const CentredSums own = centredSums(each, guess); own.squares > 0) sums.push_back(own);
    AnswerFit fit = fitSums(sums);
    if (sums.size() < 5) return fit;
    std::vector<double> residuals;
    for (const CentredSums& each : sums)
        residuals.push_back(each.residual(fit.factor));
    const auto scale = robustScale(residuals);
    if (!scale || scale->mad <= 0) return fit;
    std::vector<CentredSums> kept;
    for (std::size_t i = 0; i < sums.size(); ++i)
        if (std::abs(scale->modifiedZ(residuals[i]).value_or(0)) <= kModifiedZCutOff) kept.push_back(sums[i]);
    return fitSums(kept);
}

bool saysSomething(const AnswerFit& fit) {
    return fit.notes >= static_cast<int>(kNotesOfTrial) && std::abs(fit.factor) > kSomething * fit.sd;
}

TrialAnswer judgeTrial(OperationId operation, std::vector<LooksAtNote> tried, double guess, double least) {
    TrialAnswer answer;
    answer.operation = operation;
    std::stable_sort(tried.begin(), tried.end(),
                     [](const LooksAtNote& a, const LooksAtNote& b) { return a.order < b.order; });
    for (const LooksAtNote& each : tried) {
        answer.notes.push_back(each.note);
        answer.goes = std::max(answer.goes, each.goes);
    }
    const AnswerFit fit = fitAnswer(tried, guess);
    answer.factor = fit.factor;
    answer.sd = fit.sd;
    const bool weak = fit.notes < kWholePass && std::abs(fit.factor) + kSomething * fit.sd < least / 2;
    const bool tired = answer.goes >= kMostGoes && !saysSomething(fit);
    if (weak || tired)
        answer.says = TrialSays::doesNotAnswer;
    else if (!saysSomething(fit))
        answer.says = TrialSays::nothing;
    else if (fit.factor > 0)
        answer.says = TrialSays::answers;
    else
        answer.says = bothSayOtherWay(tried, guess) ? TrialSays::turned : TrialSays::otherWay;
    return answer;
}

} // namespace hammerline
