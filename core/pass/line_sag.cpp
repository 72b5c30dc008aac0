#include "core/pass/line_sag.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <numbers>

namespace hammerline {
namespace {

constexpr double kGravity = 9.80665;               // m/s2, by convention
constexpr double kWidthOfNatural = 1225.0 / 52;    // mm (situation 11: a line of 1.225 m over 52 naturals)
constexpr double kThickest = 3, kStrongest = 1000; // mm, N: beyond them a number stands in the wrong place

struct Material {
    std::string_view name;
    double density; // kg/m3, as tables of materials give it
};
constexpr std::array kMaterials = {Material{"steel", 7850}, Material{"brass", 8500}, Material{"nylon", 1140}};

std::string lowered(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return out;
}

bool isNumeric(char c) {
    return std::isdigit(static_cast<unsigned char>(c)) || c == '.' || c == ',';
}

double widthOfKeyboard(const Piano& piano) {
    int naturals = 0;
    for (int n = 1; n <= piano.notes; ++n)
        naturals += colourOf({n}, piano) == KeyColour::natural;
    return kWidthOfNatural * naturals;
}

/// "steel 0.5mm 10 N" -> steel, 0.5mm, 10n: each number with the unit behind it.
std::vector<std::string> partsOf(std::string_view typed) {
    std::vector<std::string> parts;
    const std::string text = lowered(typed);
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t begin = text.find_first_not_of(" \t;", at);
        if (begin == std::string::npos) break;
        at = std::min(text.find_first_of(" \t;", begin), text.size());
        const std::string part = text.substr(begin, at - begin);
        const bool unitOfLast = !parts.empty() && isNumeric(parts.back().back()) && !isNumeric(part.front());
        if (unitOfLast)
            parts.back() += part;
        else
            parts.push_back(part);
    }
    return parts;
}

std::optional<double> lengthIn(std::string_view text) {
    const auto quantity = parseQuantity(text, Unit::mm);
    if (!quantity || quantity->relation != Relation::equal || quantity->askGrouping) return std::nullopt;
    return toTrade(quantity->count, Kind::length);
}

/// 10n, 1.5kg; a bare number is newtons.
std::optional<double> pullIn(std::string_view text) {
    double newtons = 1;
    if (text.ends_with("kg"))
        newtons = kGravity, text.remove_suffix(2);
    else if (text.ends_with("n"))
        text.remove_suffix(1);
    if (text.empty() || !std::all_of(text.begin(), text.end(), isNumeric)) return std::nullopt;
    const auto number = lengthIn(text);
    return number ? std::optional(*number * newtons) : std::nullopt;
}

std::optional<double> sagOfLine(const std::vector<std::string>& parts, const Piano& piano) {
    const auto material = std::find_if(kMaterials.begin(), kMaterials.end(),
                                       [&](const Material& each) { return each.name == parts.front(); });
    if (material == kMaterials.end() || parts.size() < 3 || parts.size() > 4) return std::nullopt;
    const auto diameter = lengthIn(parts[1]), pull = pullIn(parts[2]);
    const auto span = parts.size() == 4 ? lengthIn(parts[3]) : std::optional(widthOfKeyboard(piano));
    if (!diameter || !pull || !span) return std::nullopt;
    if (*diameter <= 0 || *diameter > kThickest || *pull <= 0 || *pull > kStrongest || *span <= 0) return std::nullopt;
    return sagOf({material->density, *diameter, *pull, *span});
}

} // namespace

double sagOf(const StretchedLine& line) {
    if (line.pull <= 0) return 0;
    const double metres = line.diameter / 1000;
    const double weight = line.density * std::numbers::pi * metres * metres / 4 * kGravity; // N/m
    const double span = line.span / 1000;
    return weight * span * span / (8 * line.pull) * 1000;
}

double sagAt(double sag, double along) {
    return 4 * sag * along * (1 - along);
}

double placeAmongNaturals(NoteNumber note, const Piano& piano) {
    double below = 0, all = 0;
    for (int n = 1; n <= piano.notes; ++n) {
        if (colourOf({n}, piano) == KeyColour::sharp) continue;
        below += n < note.value;
        ++all;
    }
    if (all < 2) return 0;
    if (colourOf(note, piano) == KeyColour::sharp) below -= 0.5;
    return std::clamp(below / (all - 1), 0.0, 1.0);
}

Outcome<double> readLineSag(std::string_view typed, const Piano& piano) {
    const std::vector<std::string> parts = partsOf(typed);
    if (parts.empty()) return 0.0;
    const bool named = std::isalpha(static_cast<unsigned char>(parts.front().front()));
    const auto sag = named ? sagOfLine(parts, piano) : lengthIn(typed);
    if (!sag || *sag < 0 || *sag > kGreatestSag) return refuse(RefusalCode::badLineSag, std::string(typed));
    return *sag;
}

} // namespace hammerline
