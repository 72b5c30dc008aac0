#include "core/stats/gauge_study.h"

#include "core/stats/distribution.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace hammerline {
namespace {

// Mean and standard deviation of the range of m = 2..10 standard normal values (control chart constants d2 and d3);
// the test integrates them afresh.
constexpr std::array kMeanOfRange = {1.12837916709552, 1.69256875064327, 2.05875074602306,
                                     2.32592894730966, 2.53441272124661, 2.70435675062451,
                                     2.84720061207734, 2.97002632441842, 3.07750546028302};
constexpr std::array kDeviationOfRange = {0.852502466427471, 0.888368004045258, 0.879808232149462,
                                          0.864081941099103, 0.848039694960321, 0.833205356271706,
                                          0.819831301949398, 0.807834275095653, 0.797050609196098};

double square(double x) {
    return x * x;
}

struct Span {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    void take(double x) {
        low = std::min(low, x);
        high = std::max(high, x);
    }
    double range() const { return high - low; }
};

/// Means over everything but the named indexes.
struct Means {
    double all{};
    std::vector<double> part, person, cell; // cell: [part * persons + person]
};

Means meansOf(const GaugeStudy& study) {
    Means out;
    out.part.resize(static_cast<std::size_t>(study.parts));
    out.person.resize(static_cast<std::size_t>(study.persons));
    out.cell.resize(out.part.size() * out.person.size());
    for (int p = 0; p < study.parts; ++p)
        for (int o = 0; o < study.persons; ++o) {
            double sum = 0;
            for (int t = 0; t < study.trials; ++t)
                sum += study.at(p, o, t);
            const double mean = sum / study.trials;
            out.cell[static_cast<std::size_t>(p * study.persons + o)] = mean;
            out.part[static_cast<std::size_t>(p)] += mean / study.persons;
            out.person[static_cast<std::size_t>(o)] += mean / study.parts;
            out.all += mean / (study.parts * study.persons);
        }
    return out;
}

VarianceAnalysis::Row rowOf(double degrees, double squares) {
    return {degrees, squares, degrees > 0 ? squares / degrees : 0.0};
}

/// Sums of squares about the means; the interaction is what parts and persons leave of the cells.
VarianceAnalysis sumsOfSquares(const GaugeStudy& study) {
    const Means means = meansOf(study);
    double part = 0;
    double person = 0;
    double interaction = 0;
    double repeat = 0;
    for (const double m : means.part)
        part += square(m - means.all) * study.persons * study.trials;
    for (const double m : means.person)
        person += square(m - means.all) * study.parts * study.trials;
    for (int p = 0; p < study.parts; ++p)
        for (int o = 0; o < study.persons; ++o) {
            const double cell = means.cell[static_cast<std::size_t>(p * study.persons + o)];
            const double expected = means.part[static_cast<std::size_t>(p)] + means.person[static_cast<std::size_t>(o)];
            interaction += square(cell - expected + means.all) * study.trials;
            for (int t = 0; t < study.trials; ++t)
                repeat += square(study.at(p, o, t) - cell);
        }
    VarianceAnalysis out;
    out.part = rowOf(study.parts - 1, part);
    out.person = rowOf(study.persons - 1, person);
    out.interaction = rowOf((study.parts - 1) * (study.persons - 1), interaction);
    out.repeat = rowOf(study.parts * study.persons * (study.trials - 1), repeat);
    return out;
}

} // namespace

double GaugeStudy::at(int part, int person, int trial) const {
    return readings[static_cast<std::size_t>((part * persons + person) * trials + trial)];
}

bool GaugeStudy::balanced() const {
    return parts >= 2 && persons >= 1 && trials >= 2 &&
           readings.size() ==
               static_cast<std::size_t>(parts) * static_cast<std::size_t>(persons) * static_cast<std::size_t>(trials);
}

std::optional<double> rangeFactor(int m) {
    if (m < 2 || m > 10) return std::nullopt;
    return kMeanOfRange[static_cast<std::size_t>(m - 2)];
}

std::optional<double> rangeFactor(int m, int groups) {
    if (m < 2 || m > 10 || groups < 1) return std::nullopt;
    const auto at = static_cast<std::size_t>(m - 2);
    return std::sqrt(square(kMeanOfRange[at]) + square(kDeviationOfRange[at]) / groups);
}

std::optional<AverageAndRange> averageAndRange(const GaugeStudy& study) {
    if (!study.balanced() || study.parts > 10 || study.persons > 10 || study.trials > 10) return std::nullopt;
    const Means means = meansOf(study);
    AverageAndRange out;
    for (int p = 0; p < study.parts; ++p)
        for (int o = 0; o < study.persons; ++o) {
            Span repeats;
            for (int t = 0; t < study.trials; ++t)
                repeats.take(study.at(p, o, t));
            out.meanRange += repeats.range() / (study.parts * study.persons);
        }
    Span persons;
    Span parts;
    std::for_each(means.person.begin(), means.person.end(), [&](double m) { persons.take(m); });
    std::for_each(means.part.begin(), means.part.end(), [&](double m) { parts.take(m); });
    out.personRange = persons.range();
    out.partRange = parts.range();

    out.repeatability = out.meanRange / *rangeFactor(study.trials);
    if (study.persons > 1) {
        const double between = square(out.personRange / *rangeFactor(study.persons, 1));
        const double carried = square(out.repeatability) / (study.parts * study.trials);
        out.reproducibility = std::sqrt(std::max(0.0, between - carried));
    }
    out.gauge = std::hypot(out.repeatability, out.reproducibility);
    out.part = out.partRange / *rangeFactor(study.parts, 1);
    out.total = std::hypot(out.gauge, out.part);
    if (out.gauge > 0) out.distinctCategories = static_cast<int>(1.41 * out.part / out.gauge);
    return out;
}

std::optional<VarianceAnalysis> varianceAnalysis(const GaugeStudy& study, bool pool) {
    if (!study.balanced()) return std::nullopt;
    VarianceAnalysis out = sumsOfSquares(study);
    const bool crossed = out.interaction.degrees > 0;
    if (crossed && out.repeat.mean > 0)
        out.interactionP =
            fisherUpper(out.interaction.mean / out.repeat.mean, out.interaction.degrees, out.repeat.degrees);
    out.interactionDropped = pool && crossed && out.interactionP > 0.25;
    const double pooled =
        (out.interaction.squares + out.repeat.squares) / (out.interaction.degrees + out.repeat.degrees);
    const double error = out.interactionDropped ? pooled : out.repeat.mean;
    const double against = out.interactionDropped || !crossed ? error : out.interaction.mean;

    // Expected mean squares: repeat = e; interaction = e + t i; person = e + t i + p t o; part = e + t i + o t q.
    const auto positive = [](double variance) { return std::max(0.0, variance); };
    const double person =
        study.persons > 1 ? positive((out.person.mean - against) / (study.parts * study.trials)) : 0.0;
    const double part = positive((out.part.mean - against) / (study.persons * study.trials));
    const double interaction =
        crossed && !out.interactionDropped ? positive((out.interaction.mean - error) / study.trials) : 0.0;
    out.repeatability = std::sqrt(error);
    out.personDeviation = std::sqrt(person);
    out.interactionDeviation = std::sqrt(interaction);
    out.gauge = std::sqrt(error + person + interaction);
    out.partDeviation = std::sqrt(part);
    out.total = std::hypot(out.gauge, out.partDeviation);
    return out;
}

double repeatabilityLimit(double repeatability) {
    return 1.96 * std::numbers::sqrt2 * repeatability;
}

double readingUncertainty(double repeatability, double resolution) {
    return std::sqrt(square(repeatability) + square(resolution) / 12);
}

} // namespace hammerline
