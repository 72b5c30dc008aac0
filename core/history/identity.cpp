#include "core/history/identity.h"

#include <algorithm>
#include <array>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 8> kIdentityKeys = {"maker",   "serial", "year", "owner",
                                                           "contact", "place",  "room", "worker"};
constexpr std::size_t kLongestField = 200;

bool isControl(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x20 || byte == 0x7F;
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

/// Characters, not bytes: continuation bytes of UTF-8 do not count.
std::size_t charactersIn(std::string_view text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

/// Four digits that stand alone and name a year in which a piano can have been made.
bool holdsYear(std::string_view text) {
    for (std::size_t i = 0; i + 4 <= text.size(); ++i) {
        const std::string_view four = text.substr(i, 4);
        const bool alone = (i == 0 || !isDigit(text[i - 1])) && (i + 4 == text.size() || !isDigit(text[i + 4]));
        if (!alone || !std::ranges::all_of(four, isDigit)) continue;
        if (four >= "1500" && four <= "2199") return true;
    }
    return false;
}

} // namespace

std::span<const std::string_view> identityKeys() {
    return kIdentityKeys;
}

std::string_view identityValue(const Identity& identity, std::string_view key) {
    const auto found = identity.find(std::string(key));
    return found == identity.end() ? std::string_view{} : std::string_view(found->second);
}

bool isArchived(const Identity& identity) {
    return identityValue(identity, kArchived) == "yes";
}

Outcome<std::string> readLine(std::string_view field, std::string_view typed, std::size_t longest) {
    std::string line;
    for (const char c : typed) {
        const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
        if (!blank && isControl(c))
            return refuse(RefusalCode::badIdentity, {}, "control-character", {{}, 0, 0, std::string(field)});
        if (!blank)
            line += c;
        else if (!line.empty() && line.back() != ' ')
            line += ' ';
    }
    if (line.ends_with(' ')) line.pop_back();
    if (charactersIn(line) > longest)
        return refuse(RefusalCode::badIdentity, line.substr(0, 40), "longest:" + std::to_string(longest),
                      {{}, 0, 0, std::string(field)});
    return line;
}

Outcome<std::string> readIdentity(std::string_view key, std::string_view typed) {
    const bool known = std::ranges::find(kIdentityKeys, key) != kIdentityKeys.end();
    if (!known) return refuse(RefusalCode::badIdentity, std::string(key), "unknown", {{}, 0, 0, std::string(key)});
    auto line = readLine(key, typed, kLongestField);
    if (!line) return line;
    const bool badYear = key == "year" && !line->empty() && !holdsYear(*line);
    if (badYear) return refuse(RefusalCode::badIdentity, *line, "year", {{}, 0, 0, "year"});
    return line;
}

} // namespace hammerline
