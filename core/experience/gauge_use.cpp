#include "core/experience/gauge_use.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kTenths = 0.1, kHalves = 0.5; // as it is written down
constexpr int kMostOfEach = 10;                // where the constants of average and range end

double resolutionOf(DimensionId id) {
    if (row(id).kind != Kind::length) return 0;
    const bool coarse = id == dimension::blow || id == dimension::checking || id == dimension::damperStart;
    return coarse ? kHalves : kTenths;
}

std::vector<double> repeatsOf(const Measured& measured, DimensionId id) {
    std::vector<double> values;
    if (measured.missing()) return values;
    for (const Reading& reading : measured.trials)
        if (!reading.word && reading.relation == Relation::equal)
            values.push_back(toTrade(reading.count, row(id).kind));
    return values;
}

double squaresOf(const std::vector<double>& values) {
    double mean = 0, squares = 0;
    for (const double each : values)
        mean += each / static_cast<double>(values.size());
    for (const double each : values)
        squares += (each - mean) * (each - mean);
    return squares;
}

/// Whether what was done from the first of these passes on, before the last, moved the cell.
bool disturbedBetween(const PianoRecord& record, std::span<const int> passes, Cell cell) {
    const int first = *std::min_element(passes.begin(), passes.end());
    const int last = *std::max_element(passes.begin(), passes.end());
    return std::any_of(record.done.begin(), record.done.end(), [&](const Done& done) {
        const bool between = done.pass >= first && done.pass < last;
        return between && std::any_of(done.notes.begin(), done.notes.end(),
                                      [&](NoteNumber at) { return disturbs(done.operation, at, cell, record.piano); });
    });
}

/// Readings by note, person and trial, of the notes that every one of these passes read at least twice.
GaugeStudy studyOf(const PianoRecord& record, std::span<const int> persons, DimensionId id) {
    std::vector<std::vector<std::vector<double>>> notes;
    std::size_t trials = 0;
    for (int n = 1; n <= record.piano.notes; ++n) {
        const Cell cell{{n}, id};
        std::vector<std::vector<double>> byPerson;
        for (const int number : persons) {
            const Pass* pass = record.pass(number);
            const Measured* measured = pass ? pass->at(cell) : nullptr;
            byPerson.push_back(measured ? repeatsOf(*measured, id) : std::vector<double>{});
        }
        const auto fewest = std::min_element(byPerson.begin(), byPerson.end(),
                                             [](const auto& a, const auto& b) { return a.size() < b.size(); });
        if (fewest->size() < 2 || disturbedBetween(record, persons, cell)) continue;
        trials = notes.empty() ? fewest->size() : std::min(trials, fewest->size());
        notes.push_back(std::move(byPerson));
    }
    GaugeStudy study{static_cast<int>(notes.size()), static_cast<int>(persons.size()), static_cast<int>(trials), {}};
    for (const auto& byPerson : notes)
        for (const auto& values : byPerson)
            study.readings.insert(study.readings.end(), values.begin(),
                                  values.begin() + static_cast<std::ptrdiff_t>(trials));
    return study;
}

std::optional<GaugeUse::Study> judged(const GaugeStudy& study) {
    GaugeUse::Study out{study.parts, study.persons, study.trials};
    const bool few = std::max({study.parts, study.persons, study.trials}) <= kMostOfEach;
    if (const auto ranges = few ? averageAndRange(study) : std::nullopt) {
        out.byRange = true;
        out.repeatability = ranges->repeatability;
        out.reproducibility = ranges->reproducibility;
        out.gauge = ranges->gauge;
        out.notesDiffer = ranges->part;
        out.total = ranges->total;
        out.distinct = ranges->distinctCategories;
        return out;
    }
    const auto variances = varianceAnalysis(study);
    if (!variances) return std::nullopt;
    out.repeatability = variances->repeatability;
    out.reproducibility = std::hypot(variances->personDeviation, variances->interactionDeviation);
    out.gauge = variances->gauge;
    out.notesDiffer = variances->partDeviation;
    out.total = variances->total;
    constexpr double kDistinct = 1.41;
    out.distinct = out.gauge > 0 ? static_cast<int>(kDistinct * out.notesDiffer / out.gauge) : 0;
    return out;
}

} // namespace

std::vector<GaugeUse> gaugeUse(const PianoRecord& record, std::span<const int> persons) {
    std::vector<GaugeUse> all;
    for (const Dimension& dimension : dimensions()) {
        if (dimension.wordsOnly) continue;
        GaugeUse use{dimension.id};
        double squares = 0;
        for (const Pass& pass : record.passes)
            for (const auto& [cell, measured] : pass.cells) {
                if (cell.dimension != dimension.id) continue;
                const std::vector<double> values = repeatsOf(measured, dimension.id);
                if (values.size() < 2) continue;
                squares += squaresOf(values);
                use.readings += static_cast<int>(values.size());
                use.degrees += static_cast<int>(values.size()) - 1;
            }
        if (use.degrees == 0) continue;
        use.repeatability = std::sqrt(squares / use.degrees);
        use.told = toTrade(uncertaintyOf(dimension.id, record.piano), dimension.kind);
        use.seen = readingUncertainty(use.repeatability, resolutionOf(dimension.id));
        use.difference = repeatabilityLimit(use.repeatability);
        if (persons.size() > 1) use.study = judged(studyOf(record, persons, dimension.id));
        all.push_back(use);
    }
    return all;
}

} // namespace hammerline
