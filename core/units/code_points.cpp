#include "core/units/code_points.h"

#include <utility>

namespace hammerline {
namespace {

/// Length of a sequence by its first byte, 0 for a byte that begins none.
std::size_t sequenceLength(unsigned char first) {
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF) return 2;
    if (first >= 0xE0 && first <= 0xEF) return 3;
    if (first >= 0xF0 && first <= 0xF4) return 4;
    return 0;
}

char toByte(char32_t value) {
    return static_cast<char>(static_cast<unsigned char>(value));
}

} // namespace

std::optional<char32_t> nextCodePoint(std::string_view text, std::size_t& at) {
    if (at >= text.size()) return std::nullopt;
    const auto first = static_cast<unsigned char>(text[at]);
    const std::size_t length = sequenceLength(first);
    if (length == 0 || at + length > text.size()) return std::nullopt;
    if (length == 1) return ++at, char32_t{first};
    char32_t value = first & (0xFFU >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        const auto byte = static_cast<unsigned char>(text[at + i]);
        if ((byte & 0xC0U) != 0x80U) return std::nullopt;
        value = (value << 6U) | (byte & 0x3FU);
    }
    const bool overlong = (length == 3 && value < 0x800) || (length == 4 && value < 0x10000);
    const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
    if (overlong || surrogate || value > 0x10FFFF) return std::nullopt;
    at += length;
    return value;
}

std::optional<std::u32string> codePoints(std::string_view text) {
    std::u32string points;
    points.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const auto point = nextCodePoint(text, at);
        if (!point) return std::nullopt;
        points.push_back(*point);
    }
    return points;
}

void appendUtf8(std::string& text, char32_t point) {
    if (point < 0x80) {
        text.push_back(toByte(point));
        return;
    }
    if (point < 0x800) {
        text.push_back(toByte(0xC0U | (point >> 6U)));
    } else {
        if (point < 0x10000) {
            text.push_back(toByte(0xE0U | (point >> 12U)));
        } else {
            text.push_back(toByte(0xF0U | (point >> 18U)));
            text.push_back(toByte(0x80U | ((point >> 12U) & 0x3FU)));
        }
        text.push_back(toByte(0x80U | ((point >> 6U) & 0x3FU)));
    }
    text.push_back(toByte(0x80U | (point & 0x3FU)));
}

std::string utf8(std::u32string_view points) {
    std::string text;
    text.reserve(points.size());
    for (const char32_t point : points)
        appendUtf8(text, point);
    return text;
}

std::string_view cutUtf8(std::string_view text, std::size_t bytes) {
    if (text.size() <= bytes) return text;
    while (bytes > 0 && (static_cast<unsigned char>(text[bytes]) & 0xC0U) == 0x80U)
        --bytes;
    return text.substr(0, bytes);
}

bool isGroupingSpace(char32_t c) {
    return c == 0xA0 || c == 0x202F || c == 0x2007 || c == 0x2009;
}

bool isSpace(char32_t c) {
    return c == U' ' || (c >= U'\t' && c <= U'\r') || c == 0xA0 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F ||
           c == 0x205F || c == 0x3000;
}

char32_t lowerCase(char32_t c) {
    if (c >= U'A' && c <= U'Z') return c + 32;
    if (c >= 0xC0 && c <= 0xDE && c != 0xD7) return c + 32; // À to Þ, not the multiplication sign
    return c;
}

std::u32string_view trimmed(std::u32string_view text) {
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

std::string_view trimmedAscii(std::string_view text) {
    const auto space = [](char c) { return c == ' ' || (c >= '\t' && c <= '\r'); };
    while (!text.empty() && space(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && space(text.back()))
        text.remove_suffix(1);
    return text;
}

std::string folded(std::string_view text) {
    const auto points = codePoints(text);
    std::string result;
    if (!points) return result;
    bool space = false;
    for (const char32_t point : trimmed(*points)) {
        if (isSpace(point)) {
            space = true;
            continue;
        }
        if (std::exchange(space, false)) result.push_back(' ');
        appendUtf8(result, lowerCase(point));
    }
    return result;
}

} // namespace hammerline
