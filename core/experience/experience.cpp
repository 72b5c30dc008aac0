#include "core/experience/experience.h"

#include "core/history/learning.h"
#include "core/judge/judge.h"

#include <algorithm>
#include <map>

namespace hammerline {
namespace {

constexpr double kNormal95 = 1.959964; // of the normal distribution, two-sided

struct AnswerKey {
    OperationId operation;
    std::optional<KeyColour> keys;
    auto operator<=>(const AnswerKey&) const = default;
};

/// The answers of one piano by what was done and read on it; nothing where nothing was done.
std::vector<Response> answersOf(const PianoRecord& record) {
    if (record.done.empty()) return {};
    PianoRecord relative = record;
    for (Pass& pass : relative.passes)
        pass = withRelativeHeights(record.piano, pass);
    const std::array ratio = {estimateRatio(record.piano, relative.passes, KeyColour::natural).value,
                              estimateRatio(record.piano, relative.passes, KeyColour::sharp).value};
    return learnedResponses(relative, ratio);
}

std::optional<CaseEstimate> estimateOf(const Response& response) {
    const bool ofThePiano = response.learned && !response.section && !response.effects.empty();
    const double sd = (response.high95 - response.low95) / (2 * kNormal95);
    if (!ofThePiano || sd <= 0) return std::nullopt;
    return CaseEstimate{response.effects.front().perUnit, sd};
}

} // namespace

bool builtAlike(const Piano& a, const Piano& b) {
    return a.action == b.action && a.capstan == b.capstan && a.letOff == b.letOff;
}

std::vector<Experience> experienceFor(const Piano& piano, std::string_view uuid, std::span<const PianoRecord> others) {
    std::map<AnswerKey, std::vector<CaseEstimate>> cases;
    for (const PianoRecord& record : others) {
        if (record.uuid == uuid || !builtAlike(record.piano, piano)) continue;
        for (const Response& response : answersOf(record))
            if (const auto estimate = estimateOf(response))
                cases[{response.operation, response.keys}].push_back(*estimate);
    }
    const std::array usual = {defaultRatio(piano, KeyColour::natural), defaultRatio(piano, KeyColour::sharp)};
    std::vector<Experience> all;
    for (const Response& guess : firstResponses(piano, usual)) {
        const auto found = cases.find({guess.operation, guess.keys});
        if (found == cases.end() || guess.effects.empty()) continue;
        const auto pooled = randomEffects(found->second);
        if (!pooled) continue;
        const Effect& effect = guess.effects.front();
        all.push_back({guess.operation, guess.keys, effect.dimension, *pooled, effect.perUnit});
    }
    return all;
}

} // namespace hammerline
