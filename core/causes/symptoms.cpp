// What a symptom points at, in the order in which a technician looks: quick, common and harmless first
// (bench-practice 5; situations 36, 39, 40, 50). Readings and the findings of the survey answer together; a check that
// neither can answer is said as such: no adjustment is invented.
#include "core/causes/keyboard.h"
#include "core/causes/symptom_rows.h"
#include "core/survey/standing.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr double kShareThatShows = 1.0 / 3; // of the notes read, for a reading to support a check

bool holds(const SymptomCheck& check, double value) {
    return check.above ? value > *check.limit : value < *check.limit;
}

/// What is known when a symptom is looked into; the pass may still be missing.
struct Known {
    const Standing& standing;
    std::optional<Keyboard> keyboard;
};

/// Whether the readings at these notes support the check; none where nothing was read of it.
std::optional<bool> saidByReadings(const SymptomCheck& check, const Known& known, NoteRange notes) {
    if (!check.dimension || !known.keyboard) return {};
    int read = 0, showing = 0;
    for (const Judged& judged : known.keyboard->input->review->ranked) {
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

std::vector<const Part*> partsOf(const SymptomCheck& check) {
    std::vector<const Part*> out;
    for (std::string_view rest = check.part; !rest.empty();) {
        const auto end = std::min(rest.find('|'), rest.size());
        if (const Part* part = findPart(rest.substr(0, end))) out.push_back(part);
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    return out;
}

/// Whether the survey found the part faulty at one of these notes; refuted only where it was found sound (or mended)
/// at every one that has it: not looked at is not sound.
std::optional<bool> saidByFindings(const SymptomCheck& check, const Known& known, NoteRange notes) {
    int places = 0, sound = 0;
    for (const Part* part : partsOf(check)) {
        for (int i = notes.first; i <= notes.last; ++i) {
            const NoteNumber note{i};
            if (!fitted(*part, note, known.standing.piano())) continue;
            const Part* felt = damperFeltSize(*part).empty() ? nullptr : known.standing.damperFeltAt(note);
            if (felt && felt != part) continue; // another felt stands there
            const FindingState state = known.standing.state(*part, note);
            const bool faulty = state == FindingState::toDo || state == FindingState::watch;
            const Finding* finding = known.standing.at(*part, note);
            const bool thisFault = check.fault.empty() || (finding && finding->fault == check.fault);
            if (faulty && thisFault) return true;
            ++places;
            sound += state == FindingState::sound || state == FindingState::mended;
        }
    }
    if (places == 0 || sound < places) return {};
    return false;
}

/// One that shows the fault outweighs one that does not.
std::optional<bool> supportedBy(const SymptomCheck& check, const Known& known, NoteRange notes) {
    const auto read = saidByReadings(check, known, notes), found = saidByFindings(check, known, notes);
    if (read && found) return *read || *found;
    return read ? read : found;
}

bool possible(const SymptomCheck& check, const Piano& piano) {
    if (check.grandOnly && piano.vertical()) return false;
    if (check.verticalOnly && !piano.vertical()) return false;
    if (check.dimension) return fittedAnywhere(*check.dimension, piano);
    const auto named = partsOf(check);
    return check.part.empty() ||
           std::any_of(named.begin(), named.end(), [&](const Part* p) { return fitted(*p, piano); });
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

Advice adviceFor(const SymptomRow& symptom, NoteRange notes, const Known& known) {
    Advice advice{std::string(symptom.key), notes, {}, false};
    bool anyRead = false, anySupported = false;
    for (const SymptomCheck& check : symptom.checks) {
        if (!possible(check, known.standing.piano())) continue;
        Advice::Check said{check.id, supportedBy(check, known, notes), {}, {}};
        if (known.keyboard) said.aftertouchGain = gainOf(check, known.keyboard->ratio[0]);
        said.sideEffects.assign(check.sideEffects.begin(), check.sideEffects.end());
        anyRead |= check.dimension && said.supported.has_value();
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
    if (!input.record) return advice;
    const Standing standing(input.record->findings, input.record->piano);
    Known known{standing, {}};
    if (input.pass && input.review) known.keyboard = keyboardOf(input);
    for (const Symptom& symptom : input.record->symptoms)
        for (const SymptomRow& row : symptomRows())
            if (row.key == symptom.key) advice.push_back(adviceFor(row, symptom.notes, known));
    return advice;
}

} // namespace hammerline
