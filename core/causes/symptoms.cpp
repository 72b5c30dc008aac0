// What a symptom points at, in the order in which a technician looks: quick, common and harmless first
// (bench-practice 5; situations 36, 39, 40, 50). A check without a dimension is said as such: no adjustment is
// invented.
#include "core/causes/keyboard.h"
#include "core/causes/symptom_rows.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr double kShareThatShows = 1.0 / 3; // of the notes read, for a reading to support a check

bool holds(const SymptomCheck& check, double value) {
    return check.above ? value > *check.limit : value < *check.limit;
}

/// Whether the readings at these notes support the check; none where nothing was read of it.
std::optional<bool> supportedBy(const SymptomCheck& check, const Keyboard& keyboard, NoteRange notes) {
    if (!check.dimension) return {};
    int read = 0, showing = 0;
    for (const Judged& judged : keyboard.input->review->ranked) {
        if (judged.cell.dimension != *check.dimension || !notes.contains(judged.cell.note)) continue;
        ++read;
        if (judged.word) {
            if (check.word && judged.word == check.word) ++showing;
            continue;
        }
        if (!judged.value) continue;
        const double value = toTrade(*judged.value, row(*check.dimension).kind);
        const bool out =
            check.limit ? holds(check, value) : judged.verdict == (check.above ? Verdict::high : Verdict::low);
        if (out) ++showing;
    }
    if (read == 0) return {};
    return showing > 0 && static_cast<double>(showing) >= kShareThatShows * read;
}

/// mm of aftertouch that the customary remedy brings, by the escapement relation (computation 6).
std::optional<double> gainOf(const SymptomCheck& check, double R) {
    switch (check.gain) {
    case AftertouchGain::none:
        return {};
    case AftertouchGain::atKey:
        return check.step;
    case AftertouchGain::atHammer:
        return check.step / R;
    }
    return {};
}

Advice adviceFor(const SymptomRow& symptom, NoteRange notes, const Keyboard& keyboard) {
    Advice advice{std::string(symptom.key), notes, {}, false};
    bool anyRead = false, anySupported = false;
    for (const SymptomCheck& check : symptom.checks) {
        if (check.grandOnly && keyboard.piano().vertical()) continue;
        if (check.dimension && !fittedAnywhere(*check.dimension, keyboard.piano())) continue;
        Advice::Check said{check.id, supportedBy(check, keyboard, notes), {}, gainOf(check, keyboard.ratio[0])};
        said.sideEffects.assign(check.sideEffects.begin(), check.sideEffects.end());
        anyRead |= said.supported.has_value();
        anySupported |= said.supported.value_or(false);
        advice.checks.push_back(std::move(said));
    }
    advice.noDimensionExplains = anyRead && !anySupported;
    if (advice.noDimensionExplains) {
        // everything that was read is in order: what has no dimension comes first, refuted adjustments are not offered
        std::stable_sort(advice.checks.begin(), advice.checks.end(), [](const auto& a, const auto& b) {
            return !a.supported.has_value() && b.supported.has_value();
        });
        for (Advice::Check& check : advice.checks)
            if (check.supported == false) {
                check.sideEffects.clear();
                check.aftertouchGain.reset();
            }
    }
    return advice;
}

} // namespace

std::vector<Advice> advise(const CauseInput& input) {
    std::vector<Advice> advice;
    if (!input.record || !input.pass || !input.review) return advice;
    const Keyboard keyboard = keyboardOf(input);
    for (const Symptom& symptom : input.record->symptoms)
        for (const SymptomRow& row : symptomRows())
            if (row.key == symptom.key) advice.push_back(adviceFor(row, symptom.notes, keyboard));
    return advice;
}

} // namespace hammerline
