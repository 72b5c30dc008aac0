#include "core/intake/slips.h"

#include "core/intake/dates.h"
#include "core/units/code_points.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace hammerline {
namespace {

/// A doubtful text taken apart: the numeral, and the unit behind it as it was typed.
struct Doubtful {
    std::string_view numeral;
    std::string_view unit; // " in", "mm", empty
    TypedQuantity quantity;
    Cell cell;
    Kind kind() const { return row(cell.dimension).kind; }
};

using Suggestions = std::vector<std::string>;

std::string_view numeralOf(std::string_view text) {
    // past the digits, marks and vulgar-fraction characters (bytes from 0x80 on); what is left is the unit
    std::size_t end = text.size();
    while (end > 0) {
        const char c = text[end - 1];
        const bool unitByte = (c >= 'a' && c <= 'z') || c == ' ' || c == '"' || c == '\'' || c == '%';
        if (!unitByte) break;
        --end;
    }
    return text.substr(0, end);
}

bool wholeDigits(std::string_view numeral) {
    return !numeral.empty() && std::all_of(numeral.begin(), numeral.end(), [](char c) { return c >= '0' && c <= '9'; });
}

std::size_t markIn(std::string_view numeral) {
    return numeral.find_first_of(".,");
}

std::string with(std::string_view numeral, std::string_view unit) {
    return std::string{numeral} + std::string{unit};
}

/// A value of the typed unit, times a power of ten, in the plain writing of that unit.
std::string scaled(const Doubtful& d, std::int64_t times, std::int64_t over) {
    if (d.quantity.fraction || d.quantity.unit == Unit::ounce) return {};
    if (std::abs(d.quantity.count) > INT64_C(1'000'000'000'000)) return {};
    const auto count = d.quantity.count * times / over;
    const Shown plain{d.quantity.unit, 6};
    std::string text = formatCount(count, plain);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return with(text, d.unit);
}

Suggestions offRail(const Doubtful& d) {
    if (d.cell.dimension != dimension::lostMotion || d.quantity.count >= 0) return {};
    return {"off rail"};
}

Suggestions negativeGap(const Doubtful& d) {
    if (!d.quantity.gap || d.quantity.count <= 0) return {};
    const auto minus = d.numeral.find('-');
    if (minus == d.numeral.npos) return {};
    return {with("gap " + std::string{d.numeral.substr(minus + 1)}, d.unit)};
}

Suggestions inchForMm(const Doubtful& d) {
    if (d.kind() != Kind::length || d.quantity.unit == Unit::inch) return {};
    return {with(d.numeral, " in")};
}

Suggestions lostZero(const Doubtful& d) {
    const auto mark = markIn(d.numeral);
    if (d.quantity.fraction || mark == d.numeral.npos ||
        d.numeral.substr(0, mark).find_first_not_of("-0") != d.numeral.npos)
        return {};
    return {with(std::string{d.numeral.substr(0, mark + 1)} + "0" + std::string{d.numeral.substr(mark + 1)}, d.unit)};
}

Suggestions lostMark(const Doubtful& d) {
    if (!wholeDigits(d.numeral) || d.numeral.size() < 2) return {};
    Suggestions all;
    for (std::size_t behind = 1; behind <= 2 && behind < d.numeral.size(); ++behind) {
        const auto at = d.numeral.size() - behind;
        all.push_back(with(std::string{d.numeral.substr(0, at)} + "." + std::string{d.numeral.substr(at)}, d.unit));
    }
    return all;
}

/// "9 1/2" of a dip is nine and a half millimetres: said in decimals, since a fraction with mm is asked about.
Suggestions mmForInch(const Doubtful& d) {
    if (d.quantity.unit != Unit::inch) return {};
    const auto asMm = parseQuantity(with(d.numeral, " mm"), Unit::mm);
    if (!asMm) return {};
    return {exactText(asMm->count, Kind::length) + " mm"};
}

Suggestions thouForMm(const Doubtful& d) {
    if (d.kind() != Kind::length || d.quantity.unit == Unit::thou || d.quantity.fraction) return {};
    if (d.cell.dimension == dimension::keyHeight) return {}; // a height from the bed is no gap in thousandths
    return {with(d.numeral, " thou")};
}

Suggestions mmForCm(const Doubtful& d) {
    if (d.quantity.unit != Unit::cm || d.quantity.fraction) return {};
    return {with(d.numeral, " mm")};
}

Suggestions ounceForGram(const Doubtful& d) {
    if (d.quantity.unit != Unit::gram) return {};
    return {with(d.numeral, " oz")};
}

/// A spreadsheet's 48 % is 0.48 underneath.
Suggestions partForPercent(const Doubtful& d) {
    if (d.quantity.unit != Unit::percent || d.quantity.count > kPerPercent) return {};
    return {scaled(d, 100, 1)};
}

Suggestions movedMark(const Doubtful& d) {
    if (markIn(d.numeral) == d.numeral.npos) return {};
    return {scaled(d, 10, 1), scaled(d, 1, 10)};
}

Suggestions strayMinus(const Doubtful& d) {
    if (d.quantity.gap || !d.numeral.starts_with('-')) return {};
    return {with(trimmedAscii(d.numeral.substr(1)), d.unit)};
}

/// 1/6 for 1/16: the ruler's denominators that a lost digit leaves like this.
Suggestions lostDigit(const Doubtful& d) {
    if (!offTheRuler(d.numeral, d.quantity)) return {};
    const auto bar = d.numeral.rfind('/');
    const std::string below{d.numeral.substr(bar + 1)};
    Suggestions all;
    for (const std::string ruler : {"16", "32", "64", "128"})
        if (ruler.starts_with(below) || ruler.ends_with(below))
            all.push_back(with(std::string{d.numeral.substr(0, bar + 1)} + ruler, d.unit));
    return all;
}

/// The same digits with the other mark, which no one takes for thousands.
Suggestions grouping(const Doubtful& d) {
    const auto mark = markIn(d.numeral);
    if (!d.quantity.askGrouping || mark == d.numeral.npos) return {};
    std::string numeral{d.numeral};
    numeral[mark] = numeral[mark] == ',' ? '.' : ',';
    return {with(numeral, d.unit)};
}

Suggestions inchForFractionOfMm(const Doubtful& d) {
    return d.quantity.askUnit ? inchForMm(d) : Suggestions{};
}

struct Row {
    std::string_view id;
    Suggestions (*suggestions)(const Doubtful&);
};

/// Odd in the writing alone, wherever the value lies.
constexpr std::array kSlipsOfWriting = {
    Row{"negative-gap", negativeGap},
    Row{"lost-digit", lostDigit},
    Row{"inch-for-mm", inchForFractionOfMm},
    Row{"grouping", grouping},
};

/// In the order of trying; what a technician would suspect first. Tried only where the value is doubtful.
constexpr std::array kSlipsOfValue = {
    Row{"off-rail", offRail},     Row{"inch-for-mm", inchForMm},           Row{"lost-zero", lostZero},
    Row{"lost-mark", lostMark},   Row{"thou-for-mm", thouForMm},           Row{"mm-for-inch", mmForInch},
    Row{"mm-for-cm", mmForCm},    Row{"part-for-percent", partForPercent}, Row{"ounce-for-gram", ounceForGram},
    Row{"moved-mark", movedMark}, Row{"stray-minus", strayMinus},
};

bool takes(std::string_view suggestion, Cell cell, const CellContext& context) {
    if (suggestion.empty() || readDate(suggestion).isDate) return false;
    if (findWord(suggestion, cell.dimension)) return true;
    const auto quantity = readQuantityOf(suggestion, cell.dimension, context);
    return quantity && isSound(*quantity, cell, context) && !groupingOpen(suggestion, *quantity, context) &&
           !offTheRuler(suggestion, *quantity);
}

/// 25.4 and 50.8 mm are whole inches: a mixed number that lost its fraction on the way (situation 63).
bool wholeInches(const Doubtful& d) {
    return d.quantity.unit == Unit::mm && d.quantity.count > 0 && d.quantity.count % kNmPerInch == 0;
}

} // namespace

bool groupingOpen(std::string_view text, const TypedQuantity& quantity, const CellContext& context) {
    if (!quantity.askGrouping || context.bothMarks) return false;
    const auto mark = markIn(text);
    return mark != text.npos && text[mark] != context.decimal.value_or('.');
}

bool offTheRuler(std::string_view text, const TypedQuantity& quantity) {
    const auto bar = text.rfind('/');
    if (!quantity.fraction || quantity.unit != Unit::inch || bar == text.npos) return false;
    std::int64_t below = 0;
    for (std::size_t at = bar + 1; at < text.size() && isDigit(static_cast<unsigned char>(text[at])); ++at)
        below = below * 10 + (text[at] - '0');
    return below > 0 && (below & (below - 1)) != 0;
}

std::optional<Slip> likelySlip(std::string_view text, const TypedQuantity& quantity, Cell cell,
                               const CellContext& context) {
    const auto numeral = numeralOf(text);
    const Doubtful doubtful{numeral, text.substr(numeral.size()), quantity, cell};
    const auto firstOf = [&](std::span<const Row> rows) -> std::optional<Slip> {
        for (const Row& each : rows)
            for (std::string& suggestion : each.suggestions(doubtful))
                if (takes(suggestion, cell, context)) return Slip{each.id, std::move(suggestion)};
        return std::nullopt;
    };
    if (auto slip = firstOf(kSlipsOfWriting)) return slip;
    if (isDoubtful(quantity, cell, context))
        if (auto slip = firstOf(kSlipsOfValue)) return slip;
    if (quantity.askUnit) return Slip{"inch-for-mm", {}};
    if (groupingOpen(text, quantity, context)) return Slip{"grouping", {}};
    if (offTheRuler(text, quantity)) return Slip{"lost-digit", {}};
    if (quantity.gap && quantity.count > 0) return Slip{"negative-gap", {}};
    if (wholeInches(doubtful)) return Slip{"lost-fraction", {}};
    return std::nullopt;
}

} // namespace hammerline
