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

/// Pieces that follow each other without gap from note 1 to the last.
bool coversAll(const std::vector<NoteRange>& ranges, const Piano& piano) {
    int next = 1;
    for (const NoteRange& r : ranges) {
        if (r.first != next) return false;
        next = r.last + 1;
    }
    return next == piano.notes + 1;
}

Outcome<void> setSections(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    std::vector<Section> sections;
    std::vector<NoteRange> ranges;
    for (auto part : split(value, ',')) {
        part = withoutBlanks(part);
        const auto space = part.find(' ');
        const auto range = noteRange(part.substr(0, space), piano);
        if (!range)
            return refuse(RefusalCode::badSections, std::string(value), std::string(form),
                          {{}, 0, 0, std::string(name)});
        const auto rest = space == std::string_view::npos ? std::string_view{} : withoutBlanks(part.substr(space));
        sections.push_back({*range, std::string(rest)});
        ranges.push_back(*range);
    }
    if (!coversAll(ranges, piano))
        return refuse(RefusalCode::badSections, std::string(value), text({1, piano.notes}),
                      {{}, 0, 0, std::string(name)});
    piano.sections = std::move(sections);
    piano.sectionsEntered = true;
    return {};
}

std::string getSections(const Piano& piano) {
    std::vector<std::string> parts;
    for (const Section& s : piano.sections)
        parts.push_back(s.name.empty() ? text(s.range) : text(s.range) + ' ' + s.name);
    return fmt::format("{}", fmt::join(parts, ","));
}

Outcome<void> setLastDamper(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    const auto note = wholeNumber(value);
    if (!note || *note < 0 || *note > piano.notes) return bad(name, value, form);
    piano.lastDamper = *note;
    return {};
}

Outcome<void> setRestRail(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    std::vector<NoteRange> pieces;
    for (const auto part : split(value, ',')) {
        const auto range = noteRange(withoutBlanks(part), piano);
        if (!range) return bad(name, value, form);
        pieces.push_back(*range);
    }
    if (!coversAll(pieces, piano)) return bad(name, value, form);
    piano.restRail = pieces;
    piano.brackets.clear();
    for (const NoteRange& piece : pieces)
        piano.brackets.push_back({piece.first, piece.last}); // its two ends
    return {};
}

std::string getRestRail(const Piano& piano) {
    std::vector<std::string> parts;
    for (const NoteRange& piece : piano.restRail)
        parts.push_back(text(piece));
    return fmt::format("{}", fmt::join(parts, ","));
}

Outcome<void> setBrackets(Piano& piano, std::string_view name, std::string_view form, std::string_view value) {
    const auto groups = split(value, ';');
    if (groups.size() != piano.restRail.size()) return bad(name, value, form);
    std::vector<std::vector<int>> brackets;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const auto notes = notesInOrder(groups[i], piano);
        if (!notes || notes->size() < 2 || !piano.restRail[i].contains(NoteNumber{notes->front()}) ||
            !piano.restRail[i].contains(NoteNumber{notes->back()}))
            return bad(name, value, form);
        brackets.push_back(*notes);
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

Outcome<void> setArms(Piano& piano, KeyColour colour, std::string_view name, std::string_view form,
                      std::string_view value) {
    std::vector<double> mm;
    for (const auto part : split(value, ',')) {
        const auto each = positiveNumber(part);
        if (!each || *each > 600) return bad(name, value, form);
        mm.push_back(*each);
    }
    // The front pin stands behind the front edge; the capstan between balance pin and key end is the rule, not a law.
    if (mm.size() != 4 || mm[1] > mm[0]) return bad(name, value, form);
    piano.arms[static_cast<std::size_t>(colour)] = {fromMm(mm[0]), fromMm(mm[1]), fromMm(mm[2]), fromMm(mm[3]), true};
    return {};
}

std::string getArms(const Piano& piano, KeyColour colour) {
    const KeyArms& a = piano.armsOf(colour);
    return a.measured ? fmt::format("{},{},{},{}", a.F(), a.P(), a.T(), a.C()) : std::string{};
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
    turn<&Piano::capstanUp>("capstan-up"),
    turn<&Piano::letOffIn>("let-off-in"),
    turn<&Piano::dropIn>("drop-in"),
};

} // namespace

std::span<const Form> forms() {
    return kForms;
}

} // namespace hammerline::attribute
