// UTF-8 text as code points, with the look-alikes of keyboards and spreadsheets made one: what every reader of typed
// text starts from.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace hammerline {

/// The next code point of valid UTF-8 at `at`, which moves on; none (and `at` unmoved) where the bytes are not UTF-8.
std::optional<char32_t> nextCodePoint(std::string_view text, std::size_t& at);
/// Whole text; none where it is not valid UTF-8.
std::optional<std::u32string> codePoints(std::string_view text);
void appendUtf8(std::string& text, char32_t);
std::string utf8(std::u32string_view text);

/// The first `bytes` bytes at most, never cutting a sequence in two.
std::string_view cutUtf8(std::string_view text, std::size_t bytes);

/// ASCII spaces, no-break, thin and other typographic spaces.
bool isSpace(char32_t);
/// A no-break, narrow no-break, thin or figure space: the ones that group digits (ISO 80000-1, 7.3.1).
bool isGroupingSpace(char32_t);
constexpr bool isDigit(char32_t c) {
    return c >= U'0' && c <= U'9';
}
constexpr bool isAsciiLetter(char32_t c) {
    return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z');
}
/// Lower case of the letters of the western European alphabets; anything else as it is.
char32_t lowerCase(char32_t);

std::u32string_view trimmed(std::u32string_view);
std::string_view trimmedAscii(std::string_view);
/// Lower case, spaces trimmed and runs of them made one. Empty where the text is not valid UTF-8.
std::string folded(std::string_view text);

} // namespace hammerline
