// The stable names of the survey's words (commands.md, bench-practice 5).
#include "core/survey/survey.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 3> kMusts = {"note", "set", "no"};
constexpr std::array<std::string_view, 5> kUnits = {"note", "piano", "set", "section", "bushing"};
constexpr std::array<std::string_view, 5> kStates = {"not-looked-at", "sound", "watch", "to-do", "mended"};
constexpr std::array<std::string_view, 9> kStages = {"before-tilting", "action",  "hammers", "rails", "key-frame",
                                                     "keys",           "dampers", "pedals",  "player"};

// As the advice on symptoms has them, in its order (core/causes/symptom_rows.cpp; a test holds the two together).
constexpr std::array<std::string_view, 40> kSymptoms = {
    "double-strike",
    "double-strike-one-note",
    "bobbling-only-by-player",
    "blocks",
    "hammer-does-not-come-back",
    "repeats-only-if-key-comes-all-the-way-up",
    "not-checking",
    "checks-too-near",
    "weak-tone",
    "weak-on-one-note",
    "click-on-key-return",
    "click-at-the-bottom",
    "buzz",
    "key-sticks-down",
    "heavy-touch-all",
    "heavy-touch-middle-of-stroke",
    "note-rings-after-release",
    "ringing-all",
    "damper-lifts-unevenly-by-pedal",
    "all-keys-front-low",
    "hammers-stand-off-the-rail",
    "keys-rattle-sideways",
    "soft-pedal-keys-wink",
    "soft-pedal-does-nothing",
    "sharps-bury",
    "notes-get-fast-worse-after-a-pass",
    "one-contiguous-block-wrong",
    "grand-bubbling-all",
    "grand-second-blow-fails",
    "sluggish-return",
    "two-notes-at-once",
    "no-sound-key-light",
    "squeak",
    "one-string-silent",
    "damper-leaks-one-note",
    "all-dampers-leak-after-work",
    "heavy-after-lost-motion",
    "key-feels-hard-at-bottom",
    "frame-knocks",
    "loud-thud-in-treble",
};

enum class SymptomOf : std::uint8_t { vertical, grand, player };
struct SymptomOfKind {
    std::string_view key;
    SymptomOf of;
};
// All others are heard on every kind of action.
constexpr std::array kSymptomsOfKinds = {
    SymptomOfKind{"bobbling-only-by-player", SymptomOf::player},
    SymptomOfKind{"hammers-stand-off-the-rail", SymptomOf::vertical},
    SymptomOfKind{"soft-pedal-keys-wink", SymptomOf::vertical},
    SymptomOfKind{"heavy-after-lost-motion", SymptomOf::vertical},
    SymptomOfKind{"grand-bubbling-all", SymptomOf::grand},
    SymptomOfKind{"grand-second-blow-fails", SymptomOf::grand},
    SymptomOfKind{"frame-knocks", SymptomOf::grand},
};

bool heardOn(std::string_view symptom, const Piano& piano) {
    for (const SymptomOfKind& row : kSymptomsOfKinds) {
        if (row.key != symptom) continue;
        if (row.of == SymptomOf::player) return piano.hasPlayer();
        return piano.vertical() == (row.of == SymptomOf::vertical);
    }
    return true;
}

template <class Enum, std::size_t N>
std::string_view at(const std::array<std::string_view, N>& names, Enum value) {
    return names[static_cast<std::size_t>(value)];
}

} // namespace

std::string_view key(Must must) {
    return at(kMusts, must);
}
std::string_view key(PartUnit unit) {
    return at(kUnits, unit);
}
std::string_view key(FindingState state) {
    return at(kStates, state);
}
std::string_view key(JobStage stage) {
    return at(kStages, stage);
}

Outcome<FindingState> parseFindingState(std::string_view text) {
    const auto found = std::find(kStates.begin(), kStates.end(), text);
    if (found == kStates.end())
        return refuse(RefusalCode::unknownState, std::string(text), "not-looked-at|sound|watch|to-do|mended");
    return static_cast<FindingState>(found - kStates.begin());
}

std::span<const std::string_view> symptomKeys() {
    return kSymptoms;
}

std::vector<std::string_view> symptomsOf(const Piano& piano) {
    std::vector<std::string_view> out;
    std::copy_if(kSymptoms.begin(), kSymptoms.end(), std::back_inserter(out),
                 [&](std::string_view symptom) { return heardOn(symptom, piano); });
    return out;
}

} // namespace hammerline
