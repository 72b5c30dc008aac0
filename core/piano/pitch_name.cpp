#include "core/piano/pitch_name.h"

#include "core/units/code_points.h"

#include <array>

namespace hammerline {
namespace {

// A to G; H is B natural in central Europe, where no other reading exists. B stays B.
constexpr std::array kPitchClassOfLetter = {9, 11, 0, 2, 4, 5, 7, 11};

/// Taken off the front of the text: the accidental, 0 where there is none.
int takeAccidental(std::u32string_view& text) {
    if (text.starts_with(U"is") || text.starts_with(U"es")) {
        const int shift = text.front() == U'i' ? 1 : -1;
        text.remove_prefix(2);
        return shift;
    }
    int shift = 0;
    while (!text.empty() && shift > -2 && shift < 2) {
        const char32_t c = text.front();
        const bool sharp = c == U'#' || c == U'♯';
        if (!sharp && c != U'b' && c != U'♭') break;
        if ((sharp && shift < 0) || (!sharp && shift > 0)) break;
        shift += sharp ? 1 : -1;
        text.remove_prefix(1);
    }
    return shift;
}

std::optional<int> wholeNumber(std::u32string_view digits) {
    if (digits.empty() || digits.size() > 3 || (digits.size() > 1 && digits.front() == U'0')) return std::nullopt;
    int value = 0;
    for (const char32_t c : digits) {
        if (!isDigit(c)) return std::nullopt;
        value = value * 10 + static_cast<int>(c - U'0');
    }
    return value;
}

/// How many strokes up (primes) or down (commas) stand there; none where anything else does.
std::optional<int> strokes(std::u32string_view text, bool up) {
    int count = 0;
    for (const char32_t c : text) {
        const bool single =
            up ? (c == U'\'' || c == U'′' || c == U'’' || c == U'`' || c == U'ʹ') : (c == U',' || c == U'͵');
        const bool twice = up && (c == U'″' || c == U'"' || c == U'”');
        if (!single && !twice && !(up && (c == U'‴' || c == U'⁗'))) return std::nullopt;
        count += single ? 1 : twice ? 2 : c == U'‴' ? 3 : 4;
    }
    return count <= 6 ? std::optional{count} : std::nullopt;
}

std::optional<int> subscript(std::u32string_view text) {
    if (text.size() != 1 || text[0] < U'₀' || text[0] > U'₉') return std::nullopt;
    return static_cast<int>(text[0] - U'₀');
}

std::optional<int> superscript(std::u32string_view text) {
    if (text.size() != 1) return std::nullopt;
    if (text[0] == U'¹') return 1;
    if (text[0] == U'²' || text[0] == U'³') return static_cast<int>(text[0] - U'²') + 2;
    if (text[0] >= U'⁴' && text[0] <= U'⁹') return static_cast<int>(text[0] - U'⁴') + 4;
    return std::nullopt;
}

/// Helmholtz: capital C is the great octave (2), c the small one (3); strokes and raised or lowered figures count
/// from there. A lowered figure of 3 and more, or 0, exists only as a scientific octave set low: C₄ is middle C.
std::optional<int> helmholtzOctave(bool capital, std::u32string_view rest) {
    if (const auto low = subscript(rest); low && capital) return *low == 1 || *low == 2 ? 2 - *low : *low;
    if (const auto high = superscript(rest); high && !capital) return 3 + *high;
    if (capital) {
        const auto down = strokes(rest, false);
        return down ? std::optional{2 - *down} : std::nullopt;
    }
    const auto up = strokes(rest, true);
    return up ? std::optional{3 + *up} : std::nullopt;
}

} // namespace

std::optional<PitchName> readPitchName(std::u32string_view text) {
    if (text.empty()) return std::nullopt;
    const char32_t letter = lowerCase(text.front());
    if (letter < U'a' || letter > U'h') return std::nullopt;
    const bool capital = text.front() != letter;
    PitchName name;
    name.pitchClass = kPitchClassOfLetter[letter - U'a'];
    text.remove_prefix(1);
    if ((letter == U'a' || letter == U'e') && text.starts_with(U's')) { // as, es
        text.remove_prefix(1);
        --name.pitchClass;
    } else {
        name.pitchClass += takeAccidental(text);
    }
    std::u32string_view digits = text;
    if (digits.size() > 1 && digits.front() == U'-') digits.remove_prefix(1);
    name.number = wholeNumber(digits);
    if (!name.number) name.octave = helmholtzOctave(capital, text);
    if (!name.number && !name.octave) return std::nullopt;
    return name;
}

} // namespace hammerline
