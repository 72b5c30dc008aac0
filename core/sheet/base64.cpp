#include "core/sheet/base64.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace hammerline {
namespace {

constexpr std::string_view kAlphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
constexpr int kNoDigit = -1;

std::array<int, 256> digitsByCharacter() {
    std::array<int, 256> digits{};
    digits.fill(kNoDigit);
    for (std::size_t i = 0; i < kAlphabet.size(); ++i)
        digits[static_cast<unsigned char>(kAlphabet[i])] = static_cast<int>(i);
    return digits;
}

} // namespace

std::string toBase64(std::string_view bytes) {
    std::string text;
    text.reserve((bytes.size() + 2) / 3 * 4);
    for (std::size_t at = 0; at < bytes.size(); at += 3) {
        const std::size_t here = std::min<std::size_t>(3, bytes.size() - at);
        std::uint32_t group = 0;
        for (std::size_t i = 0; i < 3; ++i)
            group = group << 8 | (i < here ? static_cast<unsigned char>(bytes[at + i]) : 0u);
        for (std::size_t i = 0; i < 4; ++i)
            text += i <= here ? kAlphabet[group >> (18 - 6 * i) & 63] : '=';
    }
    return text;
}

std::optional<std::string> fromBase64(std::string_view text) {
    static const std::array<int, 256> digits = digitsByCharacter();
    if (text.size() % 4 != 0) return std::nullopt;
    std::size_t padding = 0;
    while (padding < 2 && text.ends_with('=')) {
        text.remove_suffix(1);
        ++padding;
    }
    std::string bytes;
    bytes.reserve(text.size() / 4 * 3 + 2);
    std::uint32_t group = 0;
    int held = 0; // bits
    for (const char c : text) {
        const int digit = digits[static_cast<unsigned char>(c)];
        if (digit == kNoDigit) return std::nullopt;
        group = group << 6 | static_cast<std::uint32_t>(digit);
        held += 6;
        if (held < 8) continue;
        held -= 8;
        bytes += static_cast<char>(group >> held & 0xff);
    }
    const bool leftover = held > 0 && (group & ((1u << held) - 1)) != 0;
    return leftover ? std::nullopt : std::optional(std::move(bytes));
}

} // namespace hammerline
