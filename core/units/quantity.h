// Typed text <-> exact quantities (computation 2). Lengths are whole nanometres, masses whole milligrams, shares whole
// thousandths of a per cent: too small to be mistaken for what is shown, and 1/64 in and .001 in are exact.
#pragma once

#include "core/refusal/refusal.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace hammerline {

enum class Kind : std::uint8_t { length, mass, share };
enum class Unit : std::uint8_t { mm, cm, inch, thou, gram, ounce, percent };
enum class Relation : std::uint8_t { equal, less, more, between };

inline constexpr std::int64_t kNmPerMm = 1'000'000;
inline constexpr std::int64_t kNmPerInch = 25'400'000; // exact: international inch of 1959
inline constexpr std::int64_t kMgPerGram = 1'000;
inline constexpr std::int64_t kPerPercent = 1'000;

Kind kindOf(Unit);
/// mm, cm, in, thou, g, oz, %
std::string_view key(Unit);
Outcome<Unit> parseUnit(std::string_view);

/// What a typed text says. `count` is in the kind's smallest unit; `upper` is used by Relation::between only
/// (a go / no-go pair lower..upper).
struct TypedQuantity {
    std::int64_t count{};
    std::int64_t upper{};
    Relation relation = Relation::equal;
    Unit unit = Unit::mm;     // the unit that held
    bool unitTyped = false;   // it stood in the text
    bool fraction = false;    // a fraction or mixed number
    bool gap = false;         // "gap x": a gap under a straightedge, already negated
    bool askUnit = false;     // a fraction typed with mm or cm: ask whether inches were meant
    bool askGrouping = false; // 1,250 or 1.250: decimal mark or thousands? ask
    friend bool operator==(const TypedQuantity&, const TypedQuantity&) = default;
};

/// Reads a typed number: sign, decimal with . or , - or a/b, a b/c, a-b/c, vulgar fraction characters - optional unit,
/// <x, >x, a..b, gap x. `bare` holds for a number without unit; a fraction without unit is inches (for lengths).
/// Refuses: unreadable, twoDecimalMarks, zeroDenominator, wrongUnit (another kind than bare's), outOfRange (no int64).
Outcome<TypedQuantity> parseQuantity(std::string_view typed, Unit bare);

/// How a value is shown: decimals (0..6) in a unit, or the nearest 1/fraction inch, or stepped (0.5 mm: step 5,
/// decimals 1).
struct Shown {
    Unit unit = Unit::mm;
    int decimals = 1;
    int fraction = 0;  // 64 = nearest 1/64, reduced; 0 = decimal
    int step = 1;      // in units of the last decimal: 5 = by halves
    bool sign = false; // a plus sign where positive
};

/// Digits only, '.' as mark, '-' as minus, rounded half away from zero once, from the integer count. "-0.0" is "0.0".
std::string formatCount(std::int64_t count, const Shown&);
/// Exact decimal text of a count in a unit: no trailing zeros, never rounded (nm -> mm has at most 6 decimals).
std::string exactText(std::int64_t count, Kind);

/// Double in the kind's trade unit (mm, g, %), for arithmetic.
constexpr double toTrade(std::int64_t count, Kind kind) {
    return static_cast<double>(count) / static_cast<double>(kind == Kind::length ? kNmPerMm : 1000);
}
/// Rounded half away from zero to the smallest unit.
std::int64_t fromTrade(double value, Kind kind);

/// A length as a type of its own: arms, shims, stock.
struct Length {
    std::int64_t nm{};
    constexpr double mm() const { return static_cast<double>(nm) / kNmPerMm; }
    friend constexpr auto operator<=>(Length, Length) = default;
};
constexpr Length fromMm(double mm) {
    return Length{static_cast<std::int64_t>(mm * kNmPerMm + (mm < 0 ? -0.5 : 0.5))};
}

} // namespace hammerline
