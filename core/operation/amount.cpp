#include "core/operation/amount.h"

namespace hammerline {

namespace {

/// Without a "turn" or "turns" at its end; says whether it had one.
std::pair<std::string_view, bool> withoutTurn(std::string_view text) {
    const auto trim = [](std::string_view s) {
        while (!s.empty() && (s.back() == ' ' || s.back() == '\t'))
            s.remove_suffix(1);
        return s;
    };
    text = trim(text);
    for (const std::string_view unit : {std::string_view("turns"), std::string_view("turn")})
        if (text.size() > unit.size() && text.substr(text.size() - unit.size()) == unit)
            return {trim(text.substr(0, text.size() - unit.size())), true};
    return {text, false};
}

} // namespace

Outcome<double> parseAmount(std::string_view typed, AmountUnit unit) {
    const auto [number, saidTurns] = withoutTurn(typed);
    const bool turns = unit == AmountUnit::turn;
    if (saidTurns && !turns) return refuse(RefusalCode::wrongUnit, std::string(typed), turns ? "turns" : "mm");
    // A turn has no unit of its own in the parser. With inches for bare numbers a fraction and a decimal mean the same
    // there, and one inch then stands for one turn: 1/8 -> 3,175,000 nm -> 0.125.
    const auto read = parseQuantity(number, turns ? Unit::inch : Unit::mm);
    if (!read) return refuse(read.error().code, std::string(typed));
    if (read->relation != Relation::equal || read->gap) return refuse(RefusalCode::unreadable, std::string(typed));
    if (!turns) return toTrade(read->count, Kind::length);
    if (read->unitTyped) return refuse(RefusalCode::wrongUnit, std::string(typed), turns ? "turns" : "mm");
    return static_cast<double>(read->count) / static_cast<double>(kNmPerInch);
}

} // namespace hammerline
