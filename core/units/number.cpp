#include "core/units/number.h"

#include "core/units/code_points.h"

#include <array>

namespace hammerline {
namespace {

using Number = tl::expected<TypedNumber, RefusalCode>;

// So many digits keep every product below in 128 bits: 10^18 (mantissa) x 2.9e10 (ounce) x 10^9 (exponent) < 1.7e38.
constexpr std::size_t kMostDigits = 18;
constexpr std::size_t kMostFractionDigits = 9;
constexpr int kMostExponent = 9;

struct Vulgar {
    char32_t character;
    int numerator;
    int denominator;
};

constexpr std::array kVulgar = {
    Vulgar{U'½', 1, 2}, Vulgar{U'¼', 1, 4}, Vulgar{U'¾', 3, 4},  Vulgar{U'⅛', 1, 8}, Vulgar{U'⅜', 3, 8},
    Vulgar{U'⅝', 5, 8}, Vulgar{U'⅞', 7, 8}, Vulgar{U'⅓', 1, 3},  Vulgar{U'⅔', 2, 3}, Vulgar{U'⅕', 1, 5},
    Vulgar{U'⅖', 2, 5}, Vulgar{U'⅗', 3, 5}, Vulgar{U'⅘', 4, 5},  Vulgar{U'⅙', 1, 6}, Vulgar{U'⅚', 5, 6},
    Vulgar{U'⅐', 1, 7}, Vulgar{U'⅑', 1, 9}, Vulgar{U'⅒', 1, 10},
};

const Vulgar* vulgarAt(std::u32string_view text, std::size_t at) {
    if (at >= text.size()) return nullptr;
    for (const Vulgar& each : kVulgar)
        if (each.character == text[at]) return &each;
    return nullptr;
}

bool isMark(char32_t c) {
    return c == U'.' || c == U',';
}

std::size_t digitsFrom(std::u32string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && isDigit(text[end]))
        ++end;
    return end - at;
}

Wide wholeNumber(std::u32string_view digits) {
    Wide value = 0;
    for (const char32_t c : digits)
        value = value * 10 + static_cast<int>(c - U'0');
    return value;
}

tl::unexpected<RefusalCode> no(RefusalCode code) {
    return tl::unexpected{code};
}

/// e5, e-2 after a decimal: spreadsheets write .04 so.
tl::expected<int, RefusalCode> readExponent(std::u32string_view text, std::size_t& at) {
    if (at >= text.size() || text[at] != U'e') return 0;
    std::size_t end = at + 1;
    const bool negative = end < text.size() && text[end] == U'-';
    if (end < text.size() && (text[end] == U'-' || text[end] == U'+')) ++end;
    const std::size_t digits = digitsFrom(text, end);
    if (digits == 0) return no(RefusalCode::unreadable);
    if (digits > 2) return no(RefusalCode::outOfRange);
    const int value = static_cast<int>(wholeNumber(text.substr(end, digits)));
    if (value > kMostExponent) return no(RefusalCode::outOfRange);
    at = end + digits;
    return negative ? -value : value;
}

/// Thousands are written 1,250: a whole number of one to three digits not beginning with 0, then exactly three digits.
bool looksGrouped(std::u32string_view whole, std::size_t decimals) {
    return decimals == 3 && !whole.empty() && whole.size() <= 3 && whole.front() != U'0';
}

Number readDecimal(std::u32string_view text) {
    const std::size_t whole = digitsFrom(text, 0);
    std::size_t at = whole;
    std::size_t decimals = 0;
    if (at < text.size() && isMark(text[at])) {
        decimals = digitsFrom(text, ++at);
        at += decimals;
        if (at < text.size() && isMark(text[at])) return no(RefusalCode::twoDecimalMarks);
    }
    if (whole + decimals == 0) return no(RefusalCode::unreadable);
    if (whole + decimals > kMostDigits) return no(RefusalCode::outOfRange);
    TypedNumber number;
    number.askGrouping = looksGrouped(text.substr(0, whole), decimals);
    number.numerator = wholeNumber(text.substr(0, whole)) * powerOfTen(static_cast<int>(decimals)) +
                       wholeNumber(text.substr(at - decimals, decimals));
    const auto exponent = readExponent(text, at);
    if (!exponent) return no(exponent.error());
    const int scale = static_cast<int>(decimals) - *exponent;
    if (scale > 0) number.denominator = powerOfTen(scale);
    if (scale < 0) number.numerator *= powerOfTen(-scale);
    number.length = at;
    return number;
}

/// a/b at `at`.
Number readFraction(std::u32string_view text, std::size_t at) {
    const std::size_t above = digitsFrom(text, at);
    const std::size_t bar = at + above;
    if (above == 0 || bar >= text.size() || text[bar] != U'/') return no(RefusalCode::unreadable);
    const std::size_t below = digitsFrom(text, bar + 1);
    if (below == 0) return no(RefusalCode::unreadable);
    if (above > kMostFractionDigits || below > kMostFractionDigits) return no(RefusalCode::outOfRange);
    TypedNumber number;
    number.numerator = wholeNumber(text.substr(at, above));
    number.denominator = wholeNumber(text.substr(bar + 1, below));
    number.fraction = true;
    number.length = bar + 1 + below;
    if (number.denominator == 0) return no(RefusalCode::zeroDenominator);
    return number;
}

Number vulgarNumber(const Vulgar& vulgar, std::size_t end) {
    TypedNumber number;
    number.numerator = vulgar.numerator;
    number.denominator = vulgar.denominator;
    number.fraction = true;
    number.length = end;
    return number;
}

/// The fraction of a mixed number stands after one space or hyphen, or right behind as a vulgar-fraction character.
Number readMixed(std::u32string_view text, std::size_t whole) {
    if (whole > kMostFractionDigits) return no(RefusalCode::outOfRange);
    std::size_t at = whole;
    if (at < text.size() && (text[at] == U' ' || text[at] == U'-')) ++at;
    const Vulgar* vulgar = vulgarAt(text, at);
    Number number = vulgar ? vulgarNumber(*vulgar, at + 1) : readFraction(text, at);
    if (!number) return number;
    if (number->numerator >= number->denominator) return no(RefusalCode::unreadable); // 1 13/6 is a slip of 1 13/16
    number->numerator += wholeNumber(text.substr(0, whole)) * number->denominator;
    return number;
}

/// Whether digits and a fraction bar follow: "1 7/8" goes on, "1 mm" and "1-3" do not.
bool fractionFollows(std::u32string_view text, std::size_t at) {
    if (vulgarAt(text, at)) return true;
    const std::size_t digits = digitsFrom(text, at);
    return digits > 0 && at + digits < text.size() && text[at + digits] == U'/';
}

} // namespace

Number readNumber(std::u32string_view text) {
    if (const Vulgar* vulgar = vulgarAt(text, 0)) return vulgarNumber(*vulgar, 1);
    const std::size_t whole = digitsFrom(text, 0);
    if (whole > 0 && whole < text.size()) {
        if (text[whole] == U'/') return readFraction(text, 0);
        const bool joined = text[whole] == U' ' || text[whole] == U'-';
        if (vulgarAt(text, whole) || (joined && fractionFollows(text, whole + 1))) return readMixed(text, whole);
    }
    return readDecimal(text);
}

} // namespace hammerline
