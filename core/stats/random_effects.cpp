#include "core/stats/random_effects.h"

#include "core/stats/distribution.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr std::size_t kLeastCases = 3;

struct WeightedMean {
    double mean{}, weights{}, squares{};
};

/// `more` is added to every variance.
WeightedMean meanOf(std::span<const CaseEstimate> cases, double more) {
    WeightedMean out;
    double sum = 0;
    for (const CaseEstimate& each : cases) {
        const double weight = 1 / (each.sd * each.sd + more);
        sum += weight * each.value;
        out.weights += weight;
        out.squares += weight * weight;
    }
    out.mean = sum / out.weights;
    return out;
}

} // namespace

std::optional<RandomEffects> randomEffects(std::span<const CaseEstimate> cases) {
    const bool sound = std::ranges::all_of(
        cases, [](const CaseEstimate& c) { return std::isfinite(c.value) && std::isfinite(c.sd) && c.sd > 0; });
    if (cases.size() < kLeastCases || !sound) return std::nullopt;
    const auto count = static_cast<double>(cases.size());
    const WeightedMean fixed = meanOf(cases, 0);
    RandomEffects out;
    out.cases = static_cast<int>(cases.size());
    for (const CaseEstimate& each : cases)
        out.q += std::pow((each.value - fixed.mean) / each.sd, 2);
    const double spread = fixed.weights - fixed.squares / fixed.weights;
    const double variance = std::max(0.0, (out.q - (count - 1)) / spread);
    out.between = std::sqrt(variance);
    const WeightedMean random = meanOf(cases, variance);
    out.mean = random.mean;
    out.meanSd = 1 / std::sqrt(random.weights);
    const double reach = studentQuantile(0.975, count - 2) * std::hypot(out.between, out.meanSd);
    out.low95 = out.mean - reach;
    out.high95 = out.mean + reach;
    return out;
}

CaseEstimate weighed(const RandomEffects& others, const std::optional<CaseEstimate>& own) {
    const double prior = std::hypot(others.between, others.meanSd);
    if (!own) return {others.mean, prior};
    const double a = 1 / (prior * prior), b = 1 / (own->sd * own->sd);
    return {(a * others.mean + b * own->value) / (a + b), 1 / std::sqrt(a + b)};
}

} // namespace hammerline
