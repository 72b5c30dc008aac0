#include "core/units/unit.h"

#include "core/units/code_points.h"

#include <algorithm>
#include <array>

namespace hammerline {
namespace {

struct UnitRow {
    Unit unit;
    Kind kind;
    std::string_view key;
    UnitSize size;
};

constexpr std::array kUnits = {
    UnitRow{Unit::mm, Kind::length, "mm", {kNmPerMm, 1}},
    UnitRow{Unit::cm, Kind::length, "cm", {10 * kNmPerMm, 1}},
    UnitRow{Unit::inch, Kind::length, "in", {kNmPerInch, 1}},
    UnitRow{Unit::thou, Kind::length, "thou", {kNmPerInch / 1000, 1}},
    UnitRow{Unit::gram, Kind::mass, "g", {kMgPerGram, 1}},
    // avoirdupois ounce: 28.349523125 g exactly (pound of 0.45359237 kg, agreement of 1959, divided by 16)
    UnitRow{Unit::ounce, Kind::mass, "oz", {28'349'523'125, 1'000'000}},
    UnitRow{Unit::percent, Kind::share, "%", {kPerPercent, 1}},
};

struct Spelling {
    std::string_view text;
    Unit unit;
};

/// As typed, folded to lower case. A single prime is a foot and no unit here.
constexpr std::array kSpellings = {
    Spelling{"mm", Unit::mm},
    Spelling{"mm.", Unit::mm},
    Spelling{"millimetre", Unit::mm},
    Spelling{"millimetres", Unit::mm},
    Spelling{"millimeter", Unit::mm},
    Spelling{"millimeters", Unit::mm},
    Spelling{"cm", Unit::cm},
    Spelling{"cm.", Unit::cm},
    Spelling{"in", Unit::inch},
    Spelling{"in.", Unit::inch},
    Spelling{"inch", Unit::inch},
    Spelling{"inches", Unit::inch},
    Spelling{"\"", Unit::inch},
    Spelling{"''", Unit::inch},
    Spelling{"\u2033", Unit::inch},
    Spelling{"\u201d", Unit::inch},
    Spelling{"\u201c", Unit::inch},
    Spelling{"\u2032\u2032", Unit::inch},
    Spelling{"\u2019\u2019", Unit::inch},
    Spelling{"zoll", Unit::inch},
    Spelling{"pouce", Unit::inch},
    Spelling{"pouces", Unit::inch},
    Spelling{"pollice", Unit::inch},
    Spelling{"pollici", Unit::inch},
    Spelling{"pulgada", Unit::inch},
    Spelling{"pulgadas", Unit::inch},
    Spelling{"duim", Unit::inch},
    Spelling{"thou", Unit::thou},
    Spelling{"thous", Unit::thou},
    Spelling{"mil", Unit::thou},
    Spelling{"mils", Unit::thou},
    Spelling{"g", Unit::gram},
    Spelling{"g.", Unit::gram},
    Spelling{"gram", Unit::gram},
    Spelling{"grams", Unit::gram},
    Spelling{"gramm", Unit::gram},
    Spelling{"oz", Unit::ounce},
    Spelling{"oz.", Unit::ounce},
    Spelling{"ounce", Unit::ounce},
    Spelling{"ounces", Unit::ounce},
    Spelling{"%", Unit::percent},
    Spelling{"percent", Unit::percent},
    Spelling{"per cent", Unit::percent},
};

const UnitRow& rowOf(Unit unit) {
    return kUnits[static_cast<std::size_t>(unit)];
}

} // namespace

Kind kindOf(Unit unit) {
    return rowOf(unit).kind;
}
std::string_view key(Unit unit) {
    return rowOf(unit).key;
}
UnitSize sizeOf(Unit unit) {
    return rowOf(unit).size;
}

Outcome<Unit> parseUnit(std::string_view typed) {
    const std::string text = folded(typed);
    const auto found = std::find_if(kSpellings.begin(), kSpellings.end(), [&](auto& s) { return s.text == text; });
    if (found == kSpellings.end()) return refuse(RefusalCode::unreadable, std::string{typed});
    return found->unit;
}

} // namespace hammerline
