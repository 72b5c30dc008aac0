// The set-up by name and text: what the command line, the window's form and the book exchange. One row an attribute.
#include "core/piano/attribute_forms.h"
#include "core/piano/dimension.h"
#include "core/piano/operation_id.h"

#include <fmt/format.h>

#include <algorithm>

namespace hammerline {
namespace {

using attribute::bad;
using attribute::Form;
using attribute::split;

// --- rows of fixed choices: the words stand in the order of the enumeration
struct Choice {
    std::string_view name, words;
    int (*get)(const Piano&);
    void (*set)(Piano&, int);
};

template <auto Member>
constexpr Choice choice(std::string_view name, std::string_view words) {
    using Type = std::remove_reference_t<decltype(std::declval<Piano&>().*Member)>;
    return {name, words, [](const Piano& p) { return static_cast<int>(p.*Member); },
            [](Piano& p, int value) { p.*Member = static_cast<Type>(value); }};
}

constexpr std::array kChoices = {
    choice<&Piano::damping>("damping", "underdamper|overdamper|grand-lever"),
    choice<&Piano::capstan>("capstan", "holed|square|dowel|rocker|fixed|drop-button"),
    choice<&Piano::butt>("butt", "wood-flange|cord-loop|brass-rail"),
    choice<&Piano::letOff>("let-off", "eye-screw|front-screw|none"),
    choice<&Piano::player>("player", "none|above|below"),
    choice<&Piano::playerWorks>("player-works", "wippen|key|sticker"),
    choice<&Piano::keys>("keys", "loose|hooked"),
};

// --- families: a prefix, then what is spoken of
constexpr std::string_view kGaugePrefix = "gauge-", kMinutesPrefix = "minutes-";
constexpr std::string_view kGauges = "rule|simple|good", kMinutes = "0.1..600";

std::optional<std::string_view> after(std::string_view prefix, std::string_view name) {
    if (name.substr(0, prefix.size()) != prefix) return std::nullopt;
    return name.substr(prefix.size());
}

Outcome<void> setGauge(Piano& piano, std::string_view dimension, std::string_view name, std::string_view value) {
    const auto id = findDimension(dimension);
    if (!id) return refuse(RefusalCode::unknownAttribute, std::string(name));
    const auto words = split(kGauges, '|');
    if (std::find(words.begin(), words.end(), value) == words.end()) return bad(name, value, kGauges);
    piano.gauges[std::string(key(*id))] = std::string(value);
    return {};
}

bool isWork(std::string_view key) {
    const auto ways = accessKeys();
    return findOperation(key) || std::find(ways.begin(), ways.end(), key) != ways.end();
}

/// Minutes of an operation at one note (or of a common one in all), or of getting at it and back.
Outcome<void> setMinutes(Piano& piano, std::string_view of, std::string_view name, std::string_view value) {
    if (!isWork(of)) return refuse(RefusalCode::unknownAttribute, std::string(name));
    std::string point(value); // a decimal comma is a point
    std::replace(point.begin(), point.end(), ',', '.');
    const auto minutes = attribute::positiveNumber(point);
    if (!minutes || *minutes < 0.1 || *minutes > 600) return bad(name, value, kMinutes);
    piano.minutes[std::string(of)] = *minutes;
    return {};
}

/// The piano anew from its preset and all that was said of it but this.
Outcome<void> takeBack(Piano& piano, std::string_view name) {
    auto fresh = makePiano(piano.action, piano.notes, piano.lowestMidi);
    if (!fresh) return tl::unexpected(fresh.error());
    fresh->name = piano.name;
    for (const auto& [each, value] : attributePairs(piano))
        if (each != name) (void)setAttribute(*fresh, each, value); // brackets may have gone with their rail
    piano = std::move(*fresh);
    return {};
}

bool known(std::string_view name) {
    const auto named = [name](const auto& row) { return row.name == name; };
    if (std::any_of(kChoices.begin(), kChoices.end(), named)) return true;
    if (std::any_of(attribute::forms().begin(), attribute::forms().end(), named)) return true;
    if (const auto of = after(kGaugePrefix, name)) return findDimension(*of).has_value();
    const auto of = after(kMinutesPrefix, name);
    return of && isWork(*of);
}

} // namespace

const std::vector<AttributeRow>& attributes() {
    static const std::vector<AttributeRow> rows = [] {
        std::vector<AttributeRow> out;
        for (const Choice& c : kChoices)
            out.push_back({c.name, c.words});
        for (const Form& f : attribute::forms())
            out.push_back({f.name, f.form});
        out.push_back({"gauge-DIMENSION", kGauges});
        out.push_back({"minutes-OPERATION", kMinutes});
        return out;
    }();
    return rows;
}

bool concerns(std::string_view attribute, const Piano& piano) {
    constexpr std::array<std::string_view, 7> kVerticalOnly = {"damping",   "butt",     "player",          "keys",
                                                               "rest-rail", "brackets", "rest-rail-factor"};
    if (attribute == "player-works") return piano.vertical() && piano.hasPlayer();
    if (attribute == "drop-in") return !piano.vertical();
    return piano.vertical() || std::find(kVerticalOnly.begin(), kVerticalOnly.end(), attribute) == kVerticalOnly.end();
}

bool possible(std::string_view attribute, std::string_view value, const Piano& piano) {
    if (attribute == "damping") return (value == "grand-lever") == !piano.vertical();
    if (attribute == "capstan" && value == "drop-button") return piano.action == ActionKind::drop;
    return true;
}

Outcome<void> setAttribute(Piano& piano, std::string_view name, std::string_view value) {
    if (value.empty() && known(name)) return takeBack(piano, name);
    for (const Choice& c : kChoices) {
        if (c.name != name) continue;
        const auto words = split(c.words, '|');
        const auto found = std::find(words.begin(), words.end(), value);
        if (found == words.end()) return bad(name, value, c.words);
        c.set(piano, static_cast<int>(found - words.begin()));
        return {};
    }
    for (const Form& f : attribute::forms())
        if (f.name == name) return f.set(piano, name, f.form, value);
    if (const auto of = after(kGaugePrefix, name)) return setGauge(piano, *of, name, value);
    if (const auto of = after(kMinutesPrefix, name)) return setMinutes(piano, *of, name, value);
    return refuse(RefusalCode::unknownAttribute, std::string(name));
}

std::vector<std::pair<std::string, std::string>> attributePairs(const Piano& piano) {
    const auto preset = makePiano(piano.action, piano.notes, piano.lowestMidi);
    std::vector<std::pair<std::string, std::string>> pairs;
    if (!preset) return pairs;
    for (const Choice& c : kChoices)
        if (c.get(piano) != c.get(*preset))
            pairs.emplace_back(c.name, split(c.words, '|')[static_cast<std::size_t>(c.get(piano))]);
    for (const Form& f : attribute::forms())
        if (const std::string value = f.get(piano); value != f.get(*preset)) pairs.emplace_back(f.name, value);
    for (const auto& [dimension, gauge] : piano.gauges)
        pairs.emplace_back(std::string(kGaugePrefix) + dimension, gauge);
    for (const auto& [of, minutes] : piano.minutes)
        pairs.emplace_back(std::string(kMinutesPrefix) + of, fmt::format("{}", minutes));
    return pairs;
}

} // namespace hammerline
