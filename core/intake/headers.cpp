// A column head: its unit taken off, its words looked up.
#include "core/intake/header_words.h"
#include "core/units/code_points.h"

#include <unordered_map>

namespace hammerline {
namespace {

struct Letters {
    char32_t first, last;
    std::string_view plain;
};

/// Accents of the six languages off; ß written out.
constexpr std::array kPlain = {
    Letters{U'à', U'å', "a"},  Letters{U'ç', U'ç', "c"}, Letters{U'è', U'ë', "e"}, Letters{U'ì', U'ï', "i"},
    Letters{U'ñ', U'ñ', "n"},  Letters{U'ò', U'ö', "o"}, Letters{U'ø', U'ø', "o"}, Letters{U'ù', U'ü', "u"},
    Letters{U'ß', U'ß', "ss"}, Letters{U'’', U'’', "'"}, Letters{U'º', U'º', "o"}, Letters{U'°', U'°', "o"},
};

void appendPlain(std::string& text, char32_t point) {
    for (const Letters& each : kPlain) {
        if (point < each.first || point > each.last) continue;
        text += each.plain;
        return;
    }
    const bool mark =
        point == U'_' || point == U'-' || point == U'–' || point == U':' || point == U',' || point == U'.';
    if (mark)
        text += ' ';
    else if (point != 0xAD) // soft hyphen
        appendUtf8(text, point);
}

/// "Let-Off_" -> "let off".
std::string plainWords(std::string_view head) {
    std::string text;
    const auto points = codePoints(head);
    if (!points) return text;
    for (const char32_t point : *points)
        appendPlain(text, lowerCase(point));
    return folded(text);
}

std::optional<Unit> headUnit(std::string_view text) {
    if (const auto unit = parseUnit(text)) return *unit;
    const std::string plain = folded(text);
    for (const std::string_view thou : {"thousandths", "1/1000 in", "1/1000\"", "0.001 in", ".001 in", "0.001\"",
                                        ".001\"", "1/1000 inch", "tausendstel zoll", "milliemes de pouce"})
        if (plain == thou) return Unit::thou;
    return std::nullopt;
}

struct Head {
    std::string_view words;
    std::optional<Unit> unit;
    bool oddUnit = false; // something with digits in brackets that is no unit of ours: 1/64 in
};

/// "Blow [mm]", "touch depth (in)": what stands in brackets at the end.
bool takeBrackets(Head& head) {
    for (const auto& [open, close] : {std::pair{'(', ')'}, std::pair{'[', ']'}, std::pair{'{', '}'}}) {
        if (head.words.empty() || head.words.back() != close) continue;
        const auto at = head.words.rfind(open);
        if (at == head.words.npos) return false;
        const auto inside = trimmedAscii(head.words.substr(at + 1, head.words.size() - at - 2));
        head.unit = headUnit(inside);
        head.oddUnit = !head.unit && inside.find_first_of("0123456789/") != inside.npos;
        head.words = trimmedAscii(head.words.substr(0, at));
        return true;
    }
    return false;
}

/// "dip_mm", "Spieltiefe mm", "AT, thou", "Blow in": the last word, where it is a unit.
void takeLastWord(Head& head) {
    const auto at = head.words.find_last_of(" _,-/");
    if (at == head.words.npos || at == 0) return;
    const auto unit = headUnit(head.words.substr(at + 1));
    if (!unit) return;
    head.unit = *unit;
    head.words = trimmedAscii(head.words.substr(0, at));
}

/// "dip in mm": the preposition that is left when the unit is gone.
std::string_view withoutPreposition(std::string_view words) {
    for (const std::string_view preposition : {" in", " en"})
        if (words.ends_with(preposition)) return words.substr(0, words.size() - preposition.size());
    return words;
}

/// Each head of the catalogue with its row; the first row that has it counts.
std::unordered_map<std::string_view, const HeaderWords*> headsByName() {
    std::unordered_map<std::string_view, const HeaderWords*> heads;
    for (const HeaderWords& each : headerWords())
        for (std::size_t at = 1; at < each.heads.size();) {
            const std::size_t bar = each.heads.find('|', at);
            heads.emplace(each.heads.substr(at, bar - at), &each);
            at = bar + 1;
        }
    return heads;
}

/// A file may have thousands of columns: looked up, not searched for.
const HeaderWords* lookUp(std::string_view plain) {
    static const auto heads = headsByName();
    const auto found = heads.find(plain);
    return found == heads.end() || plain.empty() ? nullptr : found->second;
}

/// A catalogue key is a head too, with its hyphens as spaces.
std::optional<DimensionId> dimensionByKey(const std::string& plain) {
    static const auto keys = [] {
        std::unordered_map<std::string, DimensionId> words;
        for (const Dimension& each : dimensions())
            words.emplace(plainWords(each.key), each.id);
        return words;
    }();
    const auto found = keys.find(plain);
    return found == keys.end() ? std::nullopt : std::optional(found->second);
}

HeaderMeaning meaningOf(const Head& head) {
    std::string plain = plainWords(head.words);
    if (head.unit) plain = withoutPreposition(plain);
    if (head.oddUnit && (lookUp(plain) || dimensionByKey(plain))) return {ColumnUse::Use::ambiguous, {}, {}};
    const auto written = findDimension(head.words); // "hammer-travel" is the key, "hammer travel" a word for the blow
    if (written) return {ColumnUse::Use::dimension, *written, head.unit};
    const HeaderWords* word = lookUp(plain);
    const auto byKey = word ? std::nullopt : dimensionByKey(plain);
    if (byKey) return {ColumnUse::Use::dimension, *byKey, head.unit};
    if (!word) return {ColumnUse::Use::ignored, {}, {}};
    if (word->use == ColumnUse::Use::note) return {word->use, {}, {}};
    return {word->use, word->dimension, head.unit};
}

} // namespace

HeaderMeaning headerMeaning(std::string_view header) {
    Head whole{trimmedAscii(header), {}};
    if (!takeBrackets(whole)) {
        const auto meaning = meaningOf(whole); // "half-blow", before its last word is taken for a unit
        if (meaning.use != ColumnUse::Use::ignored) return meaning;
        takeLastWord(whole);
    }
    return meaningOf(whole);
}

} // namespace hammerline
