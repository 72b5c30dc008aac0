// The grammar of typed quantities (computation 2), read in one pass over normalised code points, in whole numbers.
#include "core/units/quantity.h"

#include "core/units/code_points.h"
#include "core/units/number.h"
#include "core/units/unit.h"

#include <utility>

namespace hammerline {
namespace {

using enum RefusalCode;

constexpr std::size_t kLongestTyped = 200; // bytes; nobody types a longer number

/// Look-alikes made one: minus signs, fraction bars, the ellipsis; ASCII lower case; spaces plain and single; spaces
/// that group digits taken out ("1 234,5" with a no-break space, ISO 80000-1 7.3.1).
std::u32string normalised(std::u32string_view typed) {
    const auto groups = [&](std::size_t at) {
        if (!isGroupingSpace(typed[at]) || at == 0 || !isDigit(typed[at - 1])) return false;
        std::size_t end = at + 1;
        while (end < typed.size() && isDigit(typed[end]))
            ++end;
        const bool bar = end < typed.size() && (typed[end] == U'/' || typed[end] == U'⁄' || typed[end] == U'∕');
        return end - at - 1 == 3 && !bar;
    };
    std::u32string text;
    for (std::size_t at = 0; at < typed.size(); ++at) {
        const char32_t c = typed[at];
        if (isSpace(c)) {
            if (!groups(at) && !text.empty() && text.back() != U' ') text.push_back(U' ');
        } else if (c == U'−' || c == U'‐' || c == U'‑' || c == U'–') {
            text.push_back(U'-');
        } else if (c == U'⁄' || c == U'∕') {
            text.push_back(U'/');
        } else if (c == U'…') {
            text += U"..";
        } else if (c == U'≤' || c == U'≥') {
            text += c == U'≤' ? U"<=" : U">=";
        } else {
            text.push_back(isAsciiLetter(c) ? lowerCase(c) : c);
        }
    }
    return text;
}

struct Part {
    TypedNumber number; // signed
    std::optional<Unit> unit;
};

using Read = tl::expected<Part, RefusalCode>;

/// sign number unit, the whole text.
Read readPart(std::u32string_view text) {
    text = trimmed(text);
    if (text.empty()) return tl::unexpected{unreadable};
    const bool negative = text.front() == U'-';
    if (negative || text.front() == U'+') text = trimmed(text.substr(1));
    auto number = readNumber(text);
    if (!number) return tl::unexpected{number.error()};
    if (negative) number->numerator = -number->numerator;
    Part part{*number, std::nullopt};
    const auto rest = trimmed(text.substr(number->length));
    if (rest.empty()) return part;
    const auto unit = parseUnit(utf8(rest));
    if (!unit) return tl::unexpected{unreadable};
    part.unit = *unit;
    return part;
}

/// The unit that holds: the typed one, inches for a fraction of a length, else the bare one (computation 2).
Unit unitOf(const Part& part, Unit bare) {
    if (part.unit) return *part.unit;
    return part.number.fraction && kindOf(bare) == Kind::length ? Unit::inch : bare;
}

tl::expected<std::int64_t, RefusalCode> countOf(const Part& part, Unit unit) {
    const UnitSize size = sizeOf(unit);
    const Wide exact =
        dividedHalfAway(part.number.numerator * size.numerator, part.number.denominator * size.denominator);
    const auto count = narrowed(exact);
    if (!count) return tl::unexpected{outOfRange};
    return *count;
}

tl::expected<TypedQuantity, RefusalCode> quantityOf(const Part& part, Unit bare) {
    TypedQuantity quantity;
    quantity.unit = unitOf(part, bare);
    if (kindOf(quantity.unit) != kindOf(bare)) return tl::unexpected{wrongUnit};
    const auto count = countOf(part, quantity.unit);
    if (!count) return tl::unexpected{count.error()};
    quantity.count = *count;
    quantity.unitTyped = part.unit.has_value();
    quantity.fraction = part.number.fraction;
    quantity.askUnit = quantity.fraction && (part.unit == Unit::mm || part.unit == Unit::cm);
    quantity.askGrouping = part.number.askGrouping;
    return quantity;
}

/// a..b: a unit behind one of the two holds for both.
tl::expected<TypedQuantity, RefusalCode> readPair(std::u32string_view low, std::u32string_view high, Unit bare) {
    if (high.find(U"..") != high.npos) return tl::unexpected{unreadable};
    auto lower = readPart(low);
    auto upper = readPart(high);
    if (!lower || !upper) return tl::unexpected{lower ? upper.error() : lower.error()};
    if (!lower->unit) lower->unit = upper->unit;
    if (!upper->unit) upper->unit = lower->unit;
    auto pair = quantityOf(*lower, bare);
    const auto end = quantityOf(*upper, bare);
    if (!pair || !end) return tl::unexpected{pair ? end.error() : pair.error()};
    if (pair->count > end->count) return tl::unexpected{unreadable}; // 46..5 is rather a slip of 46.5
    pair->upper = end->count;
    pair->relation = Relation::between;
    pair->fraction = pair->fraction || end->fraction;
    pair->askUnit = pair->askUnit || end->askUnit;
    pair->askGrouping = pair->askGrouping || end->askGrouping;
    return pair;
}

Relation readRelation(std::u32string_view& text) {
    if (text.empty() || (text.front() != U'<' && text.front() != U'>')) return Relation::equal;
    const Relation relation = text.front() == U'<' ? Relation::less : Relation::more;
    text.remove_prefix(text.size() > 1 && text[1] == U'=' ? 2 : 1);
    return relation;
}

tl::expected<TypedQuantity, RefusalCode> readQuantity(std::u32string_view text, Unit bare) {
    if (text.find(U"...") != text.npos) return tl::unexpected{unreadable}; // .8...9: three dots can be cut in two ways
    if (const auto dots = text.find(U".."); dots != text.npos)
        return readPair(text.substr(0, dots), text.substr(dots + 2), bare);
    const Relation relation = readRelation(text);
    const auto part = readPart(text);
    if (!part) return tl::unexpected{part.error()};
    auto quantity = quantityOf(*part, bare);
    if (quantity) quantity->relation = relation;
    return quantity;
}

/// A gap under the straightedge means low by as much.
void negate(TypedQuantity& quantity) {
    quantity.gap = true;
    if (quantity.relation == Relation::between) {
        quantity.upper = -std::exchange(quantity.count, -quantity.upper);
        return;
    }
    quantity.count = -quantity.count;
    if (quantity.relation == Relation::less || quantity.relation == Relation::more)
        quantity.relation = quantity.relation == Relation::less ? Relation::more : Relation::less;
}

} // namespace

Outcome<TypedQuantity> parseQuantity(std::string_view typed, Unit bare) {
    if (typed.size() > kLongestTyped) return refuse(unreadable, std::string{cutUtf8(typed, kLongestTyped)});
    const auto points = codePoints(typed);
    if (!points) return refuse(unreadable, std::string{typed});
    const std::u32string whole = normalised(*points);
    std::u32string_view text = trimmed(whole);
    constexpr std::u32string_view kGap = U"gap";
    const bool gap = text.starts_with(kGap);
    if (gap) text = trimmed(text.substr(kGap.size()));
    auto quantity = readQuantity(text, bare);
    if (!quantity) return refuse(quantity.error(), std::string{typed});
    if (gap && kindOf(bare) != Kind::length) return refuse(wrongUnit, std::string{typed});
    if (gap) negate(*quantity);
    return *quantity;
}

} // namespace hammerline
