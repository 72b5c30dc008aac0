// Whole-number arithmetic wide enough for quantities: no rounding but the one that is asked for.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>

namespace hammerline {

__extension__ using Wide = __int128;

/// n/d rounded once to the nearest whole number, halves away from zero (ISO 80000-1 annex B, rule B); d > 0.
constexpr Wide dividedHalfAway(Wide n, Wide d) {
    const Wide quotient = n / d;
    const Wide rest = n < 0 ? -(n % d) : n % d;
    if (rest < d - rest) return quotient;
    return n < 0 ? quotient - 1 : quotient + 1;
}

constexpr Wide powerOfTen(int exponent) {
    Wide power = 1;
    for (int i = 0; i < exponent; ++i)
        power *= 10;
    return power;
}

/// None where it does not fit; the least int64 is left out too, so that every count can be negated.
constexpr std::optional<std::int64_t> narrowed(Wide value) {
    if (value < -std::numeric_limits<std::int64_t>::max() || value > std::numeric_limits<std::int64_t>::max())
        return std::nullopt;
    return static_cast<std::int64_t>(value);
}

} // namespace hammerline
