#include "core/piano/year_of_humidity.h"

#include "core/units/quantity.h"

namespace hammerline {
namespace {

/// With either decimal mark, without a unit.
std::optional<double> percentIn(std::string_view text) {
    const auto read = parseQuantity(text, Unit::mm);
    if (!read || read->unitTyped) return std::nullopt;
    const double value = toTrade(read->count, Kind::length);
    return value >= 0 && value <= 100 ? std::optional(value) : std::nullopt;
}

} // namespace

Outcome<YearOfHumidity> parseYearOfHumidity(std::string_view text) {
    const auto dash = text.find('-');
    const auto low = percentIn(text.substr(0, dash));
    const auto high = dash == std::string_view::npos ? std::nullopt : percentIn(text.substr(dash + 1));
    if (!low || !high || *low >= *high) return refuse(RefusalCode::usage, std::string(text));
    return YearOfHumidity{*low, *high};
}

std::optional<YearOfHumidity> yearOfHumidity(const std::map<std::string, std::string>& preferences) {
    const auto said = preferences.find("yearly-humidity");
    if (said == preferences.end()) return std::nullopt;
    const auto year = parseYearOfHumidity(said->second);
    return year ? std::optional(*year) : std::nullopt;
}

} // namespace hammerline
