// Counts as text: digits only, rounded once from the whole count.
#include "core/units/unit.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace hammerline {
namespace {

std::string digits(Wide magnitude) {
    std::string text;
    do {
        text.insert(text.begin(), static_cast<char>('0' + static_cast<int>(magnitude % 10)));
        magnitude /= 10;
    } while (magnitude > 0);
    return text;
}

std::string_view signOf(Wide rounded, bool plus) {
    if (rounded < 0) return "-";
    return plus && rounded > 0 ? "+" : "";
}

/// A whole number of 10^-decimals as decimal text without sign.
std::string decimalText(Wide magnitude, int decimals) {
    std::string text = digits(magnitude);
    if (decimals == 0) return text;
    const auto places = static_cast<std::size_t>(decimals);
    if (text.size() <= places) text.insert(0, places + 1 - text.size(), '0');
    text.insert(text.size() - places, 1, '.');
    return text;
}

std::string fractionText(std::int64_t count, int denominator, bool plus) {
    const Wide parts = dividedHalfAway(Wide{count} * denominator, kNmPerInch);
    const Wide magnitude = parts < 0 ? -parts : parts;
    const auto whole = magnitude / denominator;
    const int rest = static_cast<int>(magnitude % denominator);
    std::string text{signOf(parts, plus)};
    if (whole > 0 || rest == 0) text += digits(whole);
    if (rest == 0) return text;
    if (whole > 0) text += ' ';
    const int common = std::gcd(rest, denominator);
    return text + digits(rest / common) + "/" + digits(denominator / common);
}

} // namespace

std::string formatCount(std::int64_t count, const Shown& shown) {
    if (shown.fraction > 0) return fractionText(count, shown.fraction, shown.sign);
    const UnitSize size = sizeOf(shown.unit);
    const int step = shown.step > 0 ? shown.step : 1;
    const Wide rounded =
        dividedHalfAway(Wide{count} * size.denominator * powerOfTen(shown.decimals), size.numerator * step) * step;
    return std::string{signOf(rounded, shown.sign)} + decimalText(rounded < 0 ? -rounded : rounded, shown.decimals);
}

std::string exactText(std::int64_t count, Kind kind) {
    const int decimals = kind == Kind::length ? 6 : 3;
    const Wide magnitude = count < 0 ? -Wide{count} : Wide{count};
    std::string text = decimalText(magnitude, decimals);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return std::string{signOf(count, false)} + text;
}

std::int64_t fromTrade(double value, Kind kind) {
    const double scaled = std::round(value * static_cast<double>(kind == Kind::length ? kNmPerMm : 1000));
    constexpr double kEdge = 9.2e18; // within int64; no action part is nine million kilometres long
    if (std::isnan(scaled)) return 0;
    return static_cast<std::int64_t>(std::clamp(scaled, -kEdge, kEdge));
}

} // namespace hammerline
