#include "core/piano/piano.h"

#include <algorithm>
#include <array>

namespace hammerline {
namespace {

constexpr std::array<bool, 12> kSharp = {false, true, false, true, false, false, true, false, true, false, true, false};

KeyArms arms(double F, double P, double T, double C) {
    return {fromMm(F), fromMm(P), fromMm(T), fromMm(C), false};
}

/// Default arms by kind, natural and sharp (bench-practice 2.6).
std::array<KeyArms, 2> defaultArms(ActionKind kind) {
    switch (kind) {
    case ActionKind::upright:
        return {arms(235, 214, 142, 127), arms(197, 178, 130, 115)};
    case ActionKind::drop:
        return {arms(215, 195, 130, 118), arms(180, 162, 119, 107)};
    case ActionKind::grand:
        return {arms(250, 228, 225, 130), arms(210, 188, 215, 120)};
    }
    return {};
}

/// The customary stock of punchings: .003 to .060 inch (the ten of the shim stack reference).
std::vector<Length> customaryStock() {
    std::vector<Length> stock;
    for (const int thou : {3, 5, 7, 10, 12, 15, 20, 30, 40, 60})
        stock.push_back(Length{thou * kNmPerInch / 1000});
    return stock;
}

} // namespace

std::string_view key(ActionKind kind) {
    switch (kind) {
    case ActionKind::upright:
        return "upright";
    case ActionKind::drop:
        return "drop";
    case ActionKind::grand:
        return "grand";
    }
    return {};
}

Outcome<ActionKind> parseActionKind(std::string_view text) {
    for (const auto kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand})
        if (key(kind) == text) return kind;
    return refuse(RefusalCode::badAttribute, std::string(text), "upright|drop|grand", {{}, 0, 0, "action"});
}

Outcome<Piano> makePiano(ActionKind kind, int notes, int lowestMidi) {
    if (notes < 20 || notes > 108) return refuse(RefusalCode::badCompass, std::to_string(notes), "20..108");
    if (lowestMidi < kLowestOfAny || lowestMidi + notes > 128)
        return refuse(RefusalCode::badCompass, std::to_string(lowestMidi), "12..127");
    Piano piano;
    piano.action = kind;
    piano.notes = notes;
    piano.lowestMidi = lowestMidi;
    piano.restRail = {{1, notes}};
    piano.brackets = {{1, notes}};
    piano.arms = defaultArms(kind);
    piano.stock = customaryStock();
    if (kind == ActionKind::drop) {
        piano.capstan = Capstan::dropButton;
        piano.keys = KeysFixing::hooked;
    }
    if (kind == ActionKind::grand) {
        piano.damping = Damping::grandLever;
        piano.letOff = LetOffScrew::frontScrew;
    }
    return piano;
}

int midiOf(NoteNumber note, const Piano& piano) {
    return piano.lowestMidi + note.value - 1;
}

KeyColour colourOf(NoteNumber note, const Piano& piano) {
    const int pitchClass = ((midiOf(note, piano) % 12) + 12) % 12;
    return kSharp[static_cast<std::size_t>(pitchClass)] ? KeyColour::sharp : KeyColour::natural;
}

std::size_t railPieceOf(NoteNumber note, const Piano& piano) {
    for (std::size_t i = 0; i < piano.restRail.size(); ++i)
        if (piano.restRail[i].contains(note)) return i;
    return 0;
}

std::vector<Section> sectionsOf(const Piano& piano) {
    if (!piano.sections.empty()) return piano.sections;
    // The break belongs to strings and plate, not to the keys: bass to A#2, tenor to C5, treble to F#6, whatever keys
    // were added outside them (common practice, no source). A piece of a few notes is none of its own.
    constexpr std::array kLastPitch = {46, 72, 90}; // MIDI
    constexpr int kFewNotes = 6;
    std::vector<int> ends;
    for (const int pitch : kLastPitch) {
        const int end = pitch - piano.lowestMidi + 1, before = ends.empty() ? 0 : ends.back();
        if (end - before >= kFewNotes && piano.notes - end >= kFewNotes) ends.push_back(end);
    }
    ends.push_back(piano.notes);
    std::vector<Section> out;
    for (const int end : ends)
        out.push_back(Section{{out.empty() ? 1 : out.back().range.last + 1, end}, {}});
    return out;
}

std::size_t sectionIndexOf(NoteNumber note, const Piano& piano) {
    const auto sections = sectionsOf(piano);
    for (std::size_t i = 0; i < sections.size(); ++i)
        if (sections[i].range.contains(note)) return i;
    return 0;
}

std::vector<NoteNumber> neighbouringNaturals(NoteNumber sharp, const Piano& piano) {
    std::vector<NoteNumber> out;
    for (const int step : {-1, 1}) {
        const NoteNumber n{sharp.value + step};
        if (piano.contains(n) && colourOf(n, piano) == KeyColour::natural) out.push_back(n);
    }
    return out;
}

std::vector<NoteNumber> neighbouringSharps(NoteNumber natural, const Piano& piano) {
    std::vector<NoteNumber> sharps;
    for (const NoteNumber beside : {NoteNumber{natural.value - 1}, NoteNumber{natural.value + 1}})
        if (piano.contains(beside) && colourOf(beside, piano) == KeyColour::sharp) sharps.push_back(beside);
    return sharps;
}

bool hasDamper(NoteNumber note, const Piano& piano) {
    return note.value <= piano.lastDamper.value_or(piano.notes);
}

double defaultRatio(const Piano& piano, KeyColour colour) {
    if (const auto& taught = piano.taught.ratio[static_cast<std::size_t>(colour)]) return taught->value;
    const double natural = piano.action == ActionKind::upright ? 4.9 : piano.action == ActionKind::drop ? 4.7 : 4.85;
    if (colour == KeyColour::natural) return natural;
    // The same capstan lift moves a sharp's shorter front less: R grows by the ratio of the key ratios
    // (bench-practice 2.6).
    const KeyArms& n = piano.armsOf(KeyColour::natural);
    const KeyArms& s = piano.armsOf(KeyColour::sharp);
    return natural * (n.F() / n.C()) / (s.F() / s.C());
}

} // namespace hammerline
