// Notes in text: one note, sets of notes, the lowest note (situation 68).
#include "core/piano/piano.h"
#include "core/piano/pitch_name.h"
#include "core/units/code_points.h"

#include <algorithm>
#include <set>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 12> kSharpNames = {"C",  "C#", "D",  "D#", "E",  "F",
                                                          "F#", "G",  "G#", "A",  "A#", "B"};

int positiveModulo(int value, int modulus) {
    return ((value % modulus) + modulus) % modulus;
}

tl::unexpected<Refusal> unknownNote(std::string_view text) {
    return refuse(RefusalCode::unknownNote, std::string{cutUtf8(text, 80)});
}

std::optional<NoteNumber> noteOfMidi(int midi, const Piano& piano) {
    const NoteNumber note{midi - piano.lowestMidi + 1};
    return piano.contains(note) ? std::optional{note} : std::nullopt;
}

/// Digits behind a letter are the octave where that note is on the piano, else the key number if its letter agrees
/// (C40); D52 is neither.
std::optional<NoteNumber> noteOfName(PitchName name, const Piano& piano, int middleC) {
    if (!name.number) return noteOfMidi(name.midi(), piano);
    const NoteNumber asKey{*name.number};
    if (*name.number <= 9) {
        name.octave = *name.number - middleC + 4;
        if (const auto note = noteOfMidi(name.midi(), piano)) return note;
    }
    const bool agrees = positiveModulo(midiOf(asKey, piano), 12) == positiveModulo(name.pitchClass, 12);
    return piano.contains(asKey) && agrees ? std::optional{asKey} : std::nullopt;
}

std::optional<int> smallNumber(std::u32string_view text) {
    if (text.empty() || text.size() > 4) return std::nullopt;
    int value = 0;
    for (const char32_t c : text) {
        if (!isDigit(c)) return std::nullopt;
        value = value * 10 + static_cast<int>(c - U'0');
    }
    return value;
}

std::optional<NoteNumber> readOne(std::u32string_view text, const Piano& piano, int middleC) {
    text = trimmed(text);
    if (const auto number = smallNumber(text)) {
        const NoteNumber note{*number};
        return piano.contains(note) ? std::optional{note} : std::nullopt;
    }
    const auto name = readPitchName(text);
    return name ? noteOfName(*name, piano, middleC) : std::nullopt;
}

/// C#4/Db4: two names of one key.
std::optional<NoteNumber> readNote(std::u32string_view text, const Piano& piano, int middleC) {
    const auto bar = text.find(U'/');
    if (bar == text.npos) return readOne(text, piano, middleC);
    const auto first = readOne(text.substr(0, bar), piano, middleC);
    const auto second = readOne(text.substr(bar + 1), piano, middleC);
    return first && first == second ? first : std::nullopt;
}

using Notes = std::set<NoteNumber>;

Notes range(NoteNumber first, NoteNumber last) {
    Notes notes;
    for (int n = first.value; n <= last.value; ++n)
        notes.insert(NoteNumber{n});
    return notes;
}

/// 1-88, C4-C5, A-0-C8, 1..88: cut at the hyphen that leaves a note on both sides.
std::optional<Notes> readRange(std::u32string_view text, const Piano& piano) {
    for (std::size_t at = 1; at + 1 < text.size(); ++at) {
        const bool dots = text.substr(at).starts_with(U"..");
        if (!dots && text[at] != U'-' && text[at] != U'–') continue;
        const auto first = readNote(text.substr(0, at), piano, 4);
        const auto last = readNote(text.substr(at + (dots ? 2 : 1)), piano, 4);
        if (first && last && *first <= *last) return range(*first, *last);
    }
    return std::nullopt;
}

/// Names of unnamed sections, by how many there are (bench-practice 2.1).
std::string_view customaryName(std::size_t index, std::size_t count) {
    constexpr std::array<std::string_view, 4> four = {"bass", "tenor", "treble", "high treble"};
    if (count == 2 && index == 1) return "treble";
    return count <= four.size() && index < four.size() ? four[index] : std::string_view{};
}

std::optional<Notes> readSection(std::u32string_view text, const Piano& piano) {
    const auto sections = sectionsOf(piano);
    const std::string wanted = folded(utf8(text));
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const auto& [extent, name] = sections[i];
        const std::string called = name.empty() ? std::string{customaryName(i, sections.size())} : folded(name);
        if (!called.empty() && called == wanted) return range(NoteNumber{extent.first}, NoteNumber{extent.last});
    }
    return std::nullopt;
}

std::optional<Notes> readPlace(std::u32string_view text, const Piano& piano) {
    text = trimmed(text);
    if (text.empty() || folded(utf8(text)) == "all") return range(NoteNumber{1}, NoteNumber{piano.notes});
    if (const auto note = readNote(text, piano, 4)) return Notes{*note};
    if (auto notes = readRange(text, piano)) return notes;
    return readSection(text, piano);
}

/// "naturals 1-44", "all sharps", "bass naturals": a colour word before or behind a place.
std::optional<Notes> readItem(std::u32string_view text, const Piano& piano) {
    text = trimmed(text);
    if (text.empty()) return std::nullopt;
    const std::string lower = folded(utf8(text));
    const auto coloured = [&](std::u32string_view word, KeyColour colour) -> std::optional<Notes> {
        const std::string plain = utf8(word);
        const bool before = lower.starts_with(plain);
        if (!before && !lower.ends_with(plain)) return std::nullopt;
        const auto place =
            codePoints(before ? lower.substr(plain.size()) : lower.substr(0, lower.size() - plain.size()));
        auto notes = readPlace(*place, piano);
        if (notes) std::erase_if(*notes, [&](NoteNumber n) { return colourOf(n, piano) != colour; });
        return notes;
    };
    if (auto notes = coloured(U"naturals", KeyColour::natural)) return notes;
    if (auto notes = coloured(U"sharps", KeyColour::sharp)) return notes;
    return readPlace(text, piano);
}

/// A letter without an octave: in a file of old names it is the small octave, in a list that a person types it is a
/// slip of the hand.
bool isBareLetter(std::u32string_view text) {
    text = trimmed(text);
    if (text.empty() || text.size() > 2) return false;
    const char32_t letter = text.front() | 0x20;
    const bool named = letter >= U'a' && letter <= U'h';
    const bool sharpOrFlat =
        text.size() == 2 && (text[1] == U'#' || text[1] == U'b' || text[1] == U'♯' || text[1] == U'♭');
    return named && (text.size() == 1 || sharpOrFlat);
}

} // namespace

std::string pitchName(int midi) {
    const auto name = kSharpNames[static_cast<std::size_t>(positiveModulo(midi, 12))];
    const int octave = (midi - positiveModulo(midi, 12)) / 12 - 1;
    return std::string{name} + std::to_string(octave);
}

std::string pitchName(NoteNumber note, const Piano& piano) {
    return pitchName(midiOf(note, piano));
}

Outcome<NoteNumber> parseNote(std::string_view text, const Piano& piano, int middleC) {
    const auto points = codePoints(text);
    if (!points || points->size() > 40) return unknownNote(text);
    const auto note = readNote(*points, piano, middleC);
    if (!note) return unknownNote(text);
    return *note;
}

Outcome<std::vector<NoteNumber>> parseNotes(std::string_view text, const Piano& piano) {
    const auto points = codePoints(text);
    if (!points || points->size() > 2000) return unknownNote(text);
    Notes all;
    std::u32string_view rest = *points;
    for (bool more = true; more;) {
        const auto comma = rest.find_first_of(U",;");
        more = comma != rest.npos;
        const auto item = rest.substr(0, comma);
        const auto notes = isBareLetter(item) ? std::nullopt : readItem(item, piano);
        if (!notes) return unknownNote(utf8(item));
        all.insert(notes->begin(), notes->end());
        if (more) rest.remove_prefix(comma + 1);
    }
    return std::vector<NoteNumber>(all.begin(), all.end());
}

std::string writeNotes(const std::vector<NoteNumber>& notes) {
    const Notes sorted(notes.begin(), notes.end());
    std::string text;
    for (auto it = sorted.begin(); it != sorted.end();) {
        const int first = it->value;
        int last = first;
        while (++it != sorted.end() && it->value == last + 1)
            ++last;
        if (!text.empty()) text += ", ";
        text += std::to_string(first);
        if (last > first) text += "-" + std::to_string(last);
    }
    return text;
}

Outcome<int> parseLowest(std::string_view text) {
    const auto points = codePoints(text);
    if (!points) return unknownNote(text);
    const auto trimmedText = trimmed(*points);
    auto midi = smallNumber(trimmedText);
    if (!midi) {
        auto name = readPitchName(trimmedText);
        if (name && name->number && *name->number <= 9) name->octave = name->number;
        if (name && name->octave) midi = name->midi();
    }
    // a name with a dash may mean an octave below nought, where no piano begins, or be a way of writing one above it
    const bool dash = text.find('-') != text.npos;
    if (!midi || dash || *midi < kLowestOfAny || *midi > 127) return unknownNote(text);
    return *midi;
}

} // namespace hammerline
