#include "core/piano/attribute_forms.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace hammerline::attribute {

Outcome<void> bad(std::string_view name, std::string_view value, std::string_view allowed) {
    return refuse(RefusalCode::badAttribute, std::string(value), std::string(allowed), {{}, 0, 0, std::string(name)});
}

std::vector<std::string_view> split(std::string_view text, char at) {
    std::vector<std::string_view> parts;
    while (true) {
        const auto end = text.find(at);
        parts.push_back(text.substr(0, end));
        if (end == std::string_view::npos) return parts;
        text.remove_prefix(end + 1);
    }
}

namespace {

std::string_view withoutBlanks(std::string_view text) {
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ')
        text.remove_suffix(1);
    return text;
}

std::optional<int> wholeNumber(std::string_view text) {
    text = withoutBlanks(text);
    int value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    return value;
}

/// As people write: a dash of print is a hyphen, a stroke between two numbers a comma.
std::string withPlainSigns(std::string_view text) {
    std::string plain(text);
    for (const std::string_view dash : {"\u2013", "\u2212"})
        for (auto at = plain.find(dash); at != std::string::npos; at = plain.find(dash))
            plain.replace(at, dash.size(), "-");
    std::replace(plain.begin(), plain.end(), '|', ',');
    return plain;
}

} // namespace

std::optional<double> positiveNumber(std::string_view text) {
    text = withoutBlanks(text);
    double value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault != std::errc{} || end != text.data() + text.size() || !std::isfinite(value) || value <= 0)
        return std::nullopt;
    return value;
}

namespace {

std::optional<NoteRange> noteRange(std::string_view text, const Piano& piano) {
    const auto parts = split(text, '-');
    const auto first = wholeNumber(parts.front());
    const auto last = parts.size() == 2 ? wholeNumber(parts[1]) : first;
    if (parts.size() > 2 || !first || !last || *first < 1 || *last < *first || *last > piano.notes) return std::nullopt;
    return NoteRange{*first, *last};
}

std::string text(NoteRange range) {
    return fmt::format("{}-{}", range.first, range.last);
}
std::string text(double value) {
    return fmt::format("{}", value);
}

std::optional<std::vector<int>> notesInOrder(std::string_view value, const Piano& piano) {
    std::vector<int> notes;
    for (const auto part : split(value, ',')) {
        const auto note = wholeNumber(part);
        if (!note || *note < 1 || *note > piano.notes || (!notes.empty() && *note <= notes.back())) return std::nullopt;
        notes.push_back(*note);
    }
    return notes;
}

std::string joined(const std::vector<int>& notes) {
    return fmt::format("{}", fmt::join(notes, ","));
}

/// Pieces that follow each other without gap from note 1 to the last, each with what stands behind its range. Nothing
/// but numbers: the last notes of all pieces but the last, as they are seen on the keyboard ("28, 58").
std::optional<std::vector<Section>> pieces(std::string_view value, const Piano& piano) {
    const std::string plain = withPlainSigns(value);
    const auto parts = split(plain, ',');
    const bool onlyBreaks =
        std::all_of(parts.begin(), parts.end(), [](std::string_view part) { return wholeNumber(part).has_value(); });
    std::vector<Section> all;
    int next = 1;
    for (auto part : parts) {
        part = withoutBlanks(part);
        const auto space = part.find(' ');
        const auto range =
            onlyBreaks ? std::optional(NoteRange{next, *wholeNumber(part)}) : noteRange(part.substr(0, space), piano);
        const bool follows = range && range->first == next && range->last >= next && range->last <= piano.notes;
        if (!follows) return std::nullopt;
        const bool named = !onlyBreaks && space != std::string_view::npos;
        all.push_back({*range, named ? std::string(withoutBlanks(part.substr(space))) : std::string{}});
        next = range->last + 1;
    }
    if (onlyBreaks && next <= piano.notes) {
        all.push_back({{next, piano.notes}, {}});
        next = piano.notes + 1;
    }
    if (next != piano.notes + 1) return std::nullopt;
    return all;
}

Outcome<void> setSections(Piano& piano, std::string_view name, std::string_view, std::string_view value) {
    auto sections = pieces(value, piano);
    if (!sections)
        return refuse(RefusalCode::badSections, std::string(value), text({1, piano.notes}),
                      {{}, 0, 0, std::string(name)});
    piano.sections = std::move(*sections);
    piano.sectionsEntered = true;
    return {};
}

std::string getSections(const Piano& piano) {
    std::vector<std::string> parts;
    for (const Section& s : piano.sections)
        parts.push_back(s.name.empty() ? text(s.range) : text(s.range) + ' ' + s.name);
    return fmt::format("{}", fmt::join(parts, ","));
}

Outcome<void> setLastDamper(Piano& piano, std::string_view name, std::string_view, std::string_view value) {
    const auto note = wholeNumber(value);
    if (!note || *note < 0 || *note > piano.notes) return bad(name, value, fmt::format("0..{}", piano.notes));
    piano.lastDamper = *note;
    return {};
}

Outcome<void> setRestRail(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    const auto parts = pieces(value, piano);
    if (!parts) return bad(name, value, form);
    piano.restRail.clear();
    piano.brackets.clear();
    for (const Section& piece : *parts) {
        piano.restRail.push_back(piece.range);
        piano.brackets.push_back({piece.range.first, piece.range.last}); // its two ends
    }
    return {};
}

std::string getRestRail(const Piano& piano) {
    std::vector<std::string> parts;
    for (const NoteRange& piece : piano.restRail)
        parts.push_back(text(piece));
    return fmt::format("{}", fmt::join(parts, ","));
}

/// The brackets of all pieces in one line, each given to the piece it stands at.
std::vector<std::vector<int>> byPiece(const std::vector<int>& notes, const Piano& piano) {
    std::vector<std::vector<int>> all(piano.restRail.size());
    for (const int note : notes)
        all[railPieceOf(NoteNumber{note}, piano)].push_back(note);
    return all;
}

Outcome<void> setBrackets(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    const auto groups = split(value, ';');
    std::vector<std::vector<int>> brackets;
    if (groups.size() == 1) {
        const auto notes = notesInOrder(value, piano);
        if (!notes) return bad(name, value, form);
        brackets = byPiece(*notes, piano);
    } else {
        for (const auto group : groups) {
            auto notes = notesInOrder(group, piano);
            if (!notes) return bad(name, value, form);
            brackets.push_back(std::move(*notes));
        }
    }
    if (brackets.size() != piano.restRail.size()) return bad(name, value, form);
    for (std::size_t i = 0; i < brackets.size(); ++i) {
        const auto& notes = brackets[i];
        const bool twoOfIt = notes.size() >= 2 && piano.restRail[i].contains(NoteNumber{notes.front()}) &&
                             piano.restRail[i].contains(NoteNumber{notes.back()});
        if (!twoOfIt) return bad(name, value, form);
    }
    piano.brackets = std::move(brackets);
    return {};
}

std::string getBrackets(const Piano& piano) {
    std::vector<std::string> groups;
    for (const auto& notes : piano.brackets)
        groups.push_back(joined(notes));
    return fmt::format("{}", fmt::join(groups, ";"));
}

Outcome<void> setBalanceScrews(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    const auto notes = notesInOrder(value, piano);
    if (!notes) return bad(name, value, form);
    piano.balanceScrews = *notes;
    return {};
}

/// The arms that the kind has where nothing was measured.
Outcome<KeyArms> customaryArms(const Piano& piano, KeyColour colour) {
    const auto usual = makePiano(piano.action, piano.notes, piano.lowestMidi);
    if (!usual) return tl::unexpected(usual.error());
    return usual->armsOf(colour);
}

/// Four numbers; what is left empty between the commas stays as is customary ("238,,140,").
Outcome<void> setArms(Piano& piano, KeyColour colour, std::string_view name, std::string_view form,
                      std::string_view value) {
    auto arms = customaryArms(piano, colour);
    if (!arms) return tl::unexpected(arms.error());
    const auto parts = split(value, ',');
    if (parts.size() != kArms.size()) return bad(name, value, form);
    for (std::size_t i = 0; i < kArms.size(); ++i) {
        if (withoutBlanks(parts[i]).empty()) continue;
        const auto mm = positiveNumber(parts[i]);
        if (!mm || *mm > 600) return bad(name, value, form);
        (*arms).*kArms[i] = fromMm(*mm);
        arms->measured[i] = true;
    }
    // The front pin stands behind the front edge; the capstan between balance pin and key end is the rule, not a law.
    if (arms->frontPin > arms->front) return bad(name, value, form);
    piano.arms[static_cast<std::size_t>(colour)] = *arms;
    return {};
}

std::string getArms(const Piano& piano, KeyColour colour) {
    const KeyArms& arms = piano.armsOf(colour);
    if (!arms.anyMeasured()) return {};
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < kArms.size(); ++i)
        parts.push_back(arms.measured[i] ? fmt::format("{}", (arms.*kArms[i]).mm()) : std::string{});
    return fmt::format("{}", fmt::join(parts, ","));
}

Outcome<void> setRailFactor(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    const auto k = positiveNumber(value);
    if (!k || *k < 0.8 || *k > 2.0) return bad(name, value, form);
    piano.railFactor = *k;
    return {};
}

Outcome<void> setRatio(Piano& piano, KeyColour colour, std::string_view name, std::string_view form,
                       std::string_view value) {
    const auto R = positiveNumber(value);
    if (!R || *R < 3 || *R > 10) return bad(name, value, form);
    piano.ratio[static_cast<std::size_t>(colour)] = *R;
    return {};
}

std::string getRatio(const Piano& piano, KeyColour colour) {
    const auto& R = piano.ratio[static_cast<std::size_t>(colour)];
    return R ? text(*R) : std::string{};
}

Outcome<void> setStock(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    std::vector<Length> stock;
    for (const auto part : split(value, ',')) {
        const auto thickness = parseQuantity(part, Unit::mm);
        if (!thickness || thickness->relation != Relation::equal || thickness->count <= 0 ||
            thickness->count > 5 * kNmPerMm)
            return bad(name, value, form);
        stock.push_back(Length{thickness->count});
    }
    std::sort(stock.begin(), stock.end());
    stock.erase(std::unique(stock.begin(), stock.end()), stock.end());
    piano.stock = std::move(stock);
    return {};
}

std::string getStock(const Piano& piano) {
    std::vector<std::string> parts;
    for (const Length& each : piano.stock)
        parts.push_back(exactText(each.nm, Kind::length) + "mm");
    return fmt::format("{}", fmt::join(parts, ","));
}

Outcome<void> setReserve(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    const auto reserve = parseQuantity(value, Unit::mm);
    if (!reserve || reserve->relation != Relation::equal || reserve->count < 0 || reserve->count > 60 * kNmPerMm)
        return bad(name, value, form);
    piano.capstanReserve = Length{reserve->count};
    return {};
}

Outcome<void> setCapstanLength(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    const auto length = parseQuantity(value, Unit::mm);
    const bool plain = length && length->relation == Relation::equal;
    if (!plain || length->count <= 0 || length->count > 80 * kNmPerMm) return bad(name, value, form);
    piano.capstanLength = Length{length->count};
    return {};
}

Outcome<void> setCrown(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    piano.crown.reset();
    if (value == "as-found") return {};
    const auto crown = value == "straight" ? parseQuantity("0", Unit::mm) : parseQuantity(value, Unit::mm);
    const bool plain = crown && crown->relation == Relation::equal;
    if (!plain || crown->count < 0 || crown->count > 2 * kNmPerMm) return bad(name, value, form);
    piano.crown = Length{crown->count};
    return {};
}

std::string getCrown(const Piano& piano) {
    if (!piano.crown) return {};
    return piano.crown->nm == 0 ? "straight" : exactText(piano.crown->nm, Kind::length) + "mm";
}

constexpr auto kNaturalArms = [](Piano& p, std::string_view n, std::string_view f, std::string_view v) {
    return setArms(p, KeyColour::natural, n, f, v);
};
constexpr auto kSharpArms = [](Piano& p, std::string_view n, std::string_view f, std::string_view v) {
    return setArms(p, KeyColour::sharp, n, f, v);
};
constexpr auto kNaturalRatio = [](Piano& p, std::string_view n, std::string_view f, std::string_view v) {
    return setRatio(p, KeyColour::natural, n, f, v);
};
constexpr auto kSharpRatio = [](Piano& p, std::string_view n, std::string_view f, std::string_view v) {
    return setRatio(p, KeyColour::sharp, n, f, v);
};

template <auto Member>
constexpr Form turn(std::string_view name) {
    return {name, "clockwise|anticlockwise",
            [](Piano& p, std::string_view n, std::string_view form, std::string_view value) -> Outcome<void> {
                if (value == "clockwise")
                    p.*Member = Turn::clockwise;
                else if (value == "anticlockwise")
                    p.*Member = Turn::anticlockwise;
                else
                    return bad(n, value, form);
                return {};
            },
            [](const Piano& p) -> std::string {
                if (!(p.*Member)) return {};
                return *(p.*Member) == Turn::clockwise ? "clockwise" : "anticlockwise";
            }};
}

// rest-rail comes before brackets: it makes them anew.
constexpr std::array kForms = {
    Form{"sections", "1-26 Bass,27-52,53-88", setSections, getSections},
    Form{"last-damper", "0..notes", setLastDamper,
         [](const Piano& p) { return p.lastDamper ? std::to_string(*p.lastDamper) : std::string{}; }},
    Form{"rest-rail", "1-44,45-88", setRestRail, getRestRail},
    Form{"brackets", "1,44;45,88", setBrackets, getBrackets},
    Form{"balance-screws", "1,14,27,40", setBalanceScrews, [](const Piano& p) { return joined(p.balanceScrews); }},
    Form{"arms-natural", "F,P,T,C", kNaturalArms, [](const Piano& p) { return getArms(p, KeyColour::natural); }},
    Form{"arms-sharp", "F,P,T,C", kSharpArms, [](const Piano& p) { return getArms(p, KeyColour::sharp); }},
    Form{"rest-rail-factor", "0.8..2", setRailFactor, [](const Piano& p) { return text(p.railFactor); }},
    Form{"ratio-natural", "3..10", kNaturalRatio, [](const Piano& p) { return getRatio(p, KeyColour::natural); }},
    Form{"ratio-sharp", "3..10", kSharpRatio, [](const Piano& p) { return getRatio(p, KeyColour::sharp); }},
    Form{"stock", "0.003in,0.005in,...", setStock, getStock},
    Form{"capstan-reserve", "0..60 mm", setReserve,
         [](const Piano& p) {
             return p.capstanReserve ? exactText(p.capstanReserve->nm, Kind::length) + "mm" : std::string{};
         }},
    Form{"capstan-length", "0..80 mm", setCapstanLength,
         [](const Piano& p) {
             return p.capstanLength ? exactText(p.capstanLength->nm, Kind::length) + "mm" : std::string{};
         }},
    Form{"crown", "as-found|straight|0..2 mm", setCrown, getCrown},
    turn<&Piano::capstanUp>("capstan-up"),
    turn<&Piano::letOffIn>("let-off-in"),
    turn<&Piano::dropIn>("drop-in"),
};

} // namespace

std::span<const Form> forms() {
    return kForms;
}

} // namespace hammerline::attribute
