#include "core/survey/odd_parts.h"

#include <algorithm>
#include <array>
#include <optional>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 5> kOddPartStates = {"there", "off", "returns", "stays-off", "back"};
constexpr std::array<std::string_view, 6> kPlacesBeside = {"soundboard", "bridges",   "strings",
                                                           "plate",      "pin-block", "case"};
constexpr std::string_view kOddPart = "odd-part.", kWorkDone = "work-done.";
constexpr std::size_t kLongestName = 60, kLongestTold = 300;

std::string_view trimmedPart(std::string_view text) {
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ')
        text.remove_suffix(1);
    return text;
}

bool canBeKept(std::string_view text, std::size_t longest) {
    const bool plain = std::ranges::none_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x20; });
    return plain && text.size() <= longest;
}

std::optional<OddPartState> oddStateOf(std::string_view value) {
    const auto found = std::ranges::find(kOddPartStates, trimmedPart(value.substr(0, value.find(';'))));
    if (found == kOddPartStates.end()) return std::nullopt;
    return static_cast<OddPartState>(found - kOddPartStates.begin());
}

/// "soundboard.crack filled": the place that it names, and what was done there.
std::optional<std::pair<std::string_view, std::string_view>> placeOf(std::string_view name) {
    const auto dot = name.find('.');
    const auto found = std::ranges::find(kPlacesBeside, name.substr(0, dot));
    if (dot == std::string_view::npos || found == kPlacesBeside.end()) return std::nullopt;
    return std::pair{*found, trimmedPart(name.substr(dot + 1))};
}

} // namespace

std::string_view key(OddPartState state) {
    return kOddPartStates.at(static_cast<std::size_t>(state));
}

std::span<const std::string_view> placesBeside() {
    return kPlacesBeside;
}

Outcome<std::pair<std::string, std::string>> parseBeside(std::string_view name, std::string_view value) {
    const bool odd = name.starts_with(kOddPart), work = name.starts_with(kWorkDone);
    const auto unread = [&] { return refuse(RefusalCode::usage, std::string(name) + '=' + std::string(value)); };
    if (!odd && !work) return unread();
    const auto of = work ? placeOf(name.substr(kWorkDone.size())) : std::nullopt;
    const std::string_view what = odd ? trimmedPart(name.substr(kOddPart.size())) : of ? of->second : "";
    const bool named = !what.empty() && canBeKept(what, kLongestName);
    const bool told = value.empty() || work || oddStateOf(value);
    if (!named || !told || !canBeKept(value, kLongestTold)) return unread();
    const std::string head = odd ? std::string(kOddPart) : std::string(kWorkDone) + std::string(of->first) + '.';
    return std::pair{head + std::string(what), std::string(trimmedPart(value))};
}

std::vector<OddPart> oddParts(const std::map<std::string, std::string>& preferences) {
    std::vector<OddPart> out;
    for (const auto& [name, value] : preferences) {
        const auto state = name.starts_with(kOddPart) ? oddStateOf(value) : std::nullopt;
        if (!state) continue;
        const auto semicolon = value.find(';');
        const std::string_view told =
            semicolon == std::string::npos ? "" : std::string_view(value).substr(semicolon + 1);
        out.push_back({name.substr(kOddPart.size()), *state, std::string(trimmedPart(told))});
    }
    return out;
}

std::vector<WorkBeside> workBeside(const std::map<std::string, std::string>& preferences) {
    std::vector<WorkBeside> out;
    for (const auto& [name, value] : preferences) {
        const bool ours = name.starts_with(kWorkDone) && !value.empty();
        const auto of = ours ? placeOf(std::string_view(name).substr(kWorkDone.size())) : std::nullopt;
        if (of) out.push_back({of->first, std::string(of->second), value});
    }
    return out;
}

bool oddPartIsMissing(const std::map<std::string, std::string>& preferences) {
    return std::ranges::any_of(oddParts(preferences),
                               [](const OddPart& part) { return part.state == OddPartState::returns; });
}

} // namespace hammerline
