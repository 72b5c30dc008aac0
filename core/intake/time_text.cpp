#include "core/intake/time_text.h"

#include "core/units/code_points.h"

#include <chrono>

namespace hammerline {
namespace {

/// Takes `digits` digits and then `behind`; false where the text goes otherwise.
bool take(std::string_view& text, std::size_t digits, std::string_view behind, int& value) {
    if (text.size() < digits + behind.size()) return false;
    value = 0;
    for (std::size_t i = 0; i < digits; ++i) {
        if (!isDigit(static_cast<unsigned char>(text[i]))) return false;
        value = value * 10 + (text[i] - '0');
    }
    if (!text.substr(digits).starts_with(behind)) return false;
    text.remove_prefix(digits + behind.size());
    return true;
}

/// .123456
std::optional<std::int64_t> microseconds(std::string_view& text) {
    std::int64_t value = 0;
    if (!text.starts_with('.')) return value;
    text.remove_prefix(1);
    std::int64_t place = 100'000;
    std::size_t digits = 0;
    for (; digits < text.size() && isDigit(static_cast<unsigned char>(text[digits])); ++digits, place /= 10)
        value += place * (text[digits] - '0');
    if (digits == 0 || digits > 6) return std::nullopt;
    text.remove_prefix(digits);
    return value;
}

} // namespace

std::optional<std::int64_t> readUtcTime(std::string_view text) {
    int year{}, month{}, day{}, hour{}, minute{}, second{};
    const bool read = take(text, 4, "-", year) && take(text, 2, "-", month) && take(text, 2, "T", day) &&
                      take(text, 2, ":", hour) && take(text, 2, ":", minute) && take(text, 2, "", second);
    if (!read || hour > 23 || minute > 59 || second > 59) return std::nullopt;
    const auto micros = microseconds(text);
    if (!micros || text != "Z") return std::nullopt;
    using namespace std::chrono;
    const year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                              std::chrono::day{static_cast<unsigned>(day)}};
    if (!date.ok()) return std::nullopt;
    const auto days = sys_days{date}.time_since_epoch().count();
    return ((std::int64_t{days} * 24 + hour) * 60 + minute) * 60'000'000 + std::int64_t{second} * 1'000'000 + *micros;
}

} // namespace hammerline
