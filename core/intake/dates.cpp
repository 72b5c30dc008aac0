#include "core/intake/dates.h"

#include "core/units/code_points.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <optional>

namespace hammerline {
namespace {

/// How spreadsheets abbreviate months in six languages, folded: English, German, French, Spanish, Italian, Dutch.
struct MonthWord {
    std::string_view start;
    int month;
};
constexpr std::array kMonths = {
    MonthWord{"jan", 1},  MonthWord{"gen", 1},  MonthWord{"ene", 1},  MonthWord{"feb", 2},  MonthWord{"fév", 2},
    MonthWord{"fev", 2},  MonthWord{"mar", 3},  MonthWord{"mrz", 3},  MonthWord{"mär", 3},  MonthWord{"mrt", 3},
    MonthWord{"maa", 3},  MonthWord{"apr", 4},  MonthWord{"avr", 4},  MonthWord{"abr", 4},  MonthWord{"may", 5},
    MonthWord{"mai", 5},  MonthWord{"mag", 5},  MonthWord{"mei", 5},  MonthWord{"jun", 6},  MonthWord{"juin", 6},
    MonthWord{"giu", 6},  MonthWord{"jul", 7},  MonthWord{"juil", 7}, MonthWord{"lug", 7},  MonthWord{"aug", 8},
    MonthWord{"aoû", 8},  MonthWord{"aou", 8},  MonthWord{"ago", 8},  MonthWord{"sep", 9},  MonthWord{"set", 9},
    MonthWord{"oct", 10}, MonthWord{"okt", 10}, MonthWord{"ott", 10}, MonthWord{"nov", 11}, MonthWord{"dec", 12},
    MonthWord{"déc", 12}, MonthWord{"dez", 12}, MonthWord{"dic", 12},
};

struct Parts {
    std::vector<int> numbers;
    std::optional<int> month; // named
    bool dots = false;        // day.month: typed with a decimal point, where dates are written so
    bool sound = true;
};

std::optional<int> monthOf(std::string_view word) {
    if (word.size() < 3 || word.size() > 12) return std::nullopt;
    for (const MonthWord& each : kMonths)
        if (word.starts_with(each.start)) return each.month;
    return std::nullopt;
}

bool isWordByte(char c) {
    return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

void takeNumber(std::string_view digits, Parts& parts) {
    if (digits.size() > 4) {
        parts.sound = false;
        return;
    }
    int value = 0;
    for (const char c : digits)
        value = value * 10 + (c - '0');
    parts.numbers.push_back(value);
}

Parts partsOf(std::string_view text) {
    Parts parts;
    for (std::size_t at = 0; at < text.size() && parts.sound;) {
        std::size_t end = at;
        if (isWordByte(text[at])) {
            while (end < text.size() && isWordByte(text[end]))
                ++end;
            const auto month = monthOf(text.substr(at, end - at));
            parts.sound = month && !parts.month;
            parts.month = month;
        } else if (isDigit(static_cast<unsigned char>(text[at]))) {
            while (end < text.size() && isDigit(static_cast<unsigned char>(text[end])))
                ++end;
            takeNumber(text.substr(at, end - at), parts);
        } else {
            parts.dots = parts.dots || text[at] == '.';
            parts.sound = std::string_view{"-/. ,"}.find(text[at]) != std::string_view::npos;
            ++end;
        }
        at = end;
    }
    return parts;
}

void addFraction(int above, int below, std::vector<std::string>& origins) {
    const bool ruler = below == 2 || below == 4 || below == 8 || below == 16 || below == 32 || below == 64;
    if (!ruler || above < 1 || above >= below) return;
    const auto text = std::to_string(above) + "/" + std::to_string(below);
    if (std::find(origins.begin(), origins.end(), text) == origins.end()) origins.push_back(text);
}

/// 3/8 is read as month/day or day/month of this year, 1/16 as a month of 2016: what stood there before.
DateText originsOf(int day, int month, std::optional<int> year, bool dots) {
    DateText date;
    date.isDate = true;
    addFraction(month, day, date.origins);
    addFraction(day, month, date.origins);
    if (year && day == 1) addFraction(month, *year % 100, date.origins);
    if (dots) date.origins.push_back(std::to_string(day) + "." + std::to_string(month));
    return date;
}

bool isDay(int n) {
    return n >= 1 && n <= 31;
}
bool isMonth(int n) {
    return n >= 1 && n <= 12;
}

DateText namedMonth(const Parts& parts) {
    const auto& numbers = parts.numbers;
    if (numbers.empty() || numbers.size() > 2) return {};
    const int first = numbers[0];
    if (numbers.size() == 2) { // 8 Mar 2026
        if (!isDay(first)) return {};
        return originsOf(first, *parts.month, numbers[1], parts.dots);
    }
    if (!isDay(first)) return originsOf(1, *parts.month, first, parts.dots); // Jan-32: no day
    auto date = originsOf(first, *parts.month, std::nullopt, parts.dots);    // 8-Mar, or Jan-16 of 2016
    addFraction(*parts.month, first, date.origins);
    return date;
}

DateText threeNumbers(const Parts& parts) {
    const auto& n = parts.numbers;
    if (n.size() != 3) return {};
    const auto isYear = [](int number) { return number >= 1900 || (number >= 20 && number <= 99); };
    if (n[0] >= 1900 && isMonth(n[1]) && isDay(n[2])) return originsOf(n[2], n[1], n[0], parts.dots);
    if (!isYear(n[2])) return {};
    const bool dayFirst = isDay(n[0]) && isMonth(n[1]);
    const bool monthFirst = isMonth(n[0]) && isDay(n[1]);
    if (!dayFirst && !monthFirst) return {};
    return dayFirst ? originsOf(n[0], n[1], n[2], parts.dots) : originsOf(n[1], n[0], n[2], parts.dots);
}

/// Day 1 is 1 January 1900 and 1900 counts as a leap year: from March 1900 on, days since 30 December 1899.
DateText serialDay(std::string_view text) {
    int days = 0;
    if (text.size() != 5 || text.front() == '0') return {}; // no spreadsheet puts noughts before a day
    for (const char c : text) {
        if (!isDigit(static_cast<unsigned char>(c))) return {};
        days = days * 10 + (c - '0');
    }
    using namespace std::chrono;
    const year_month_day date{sys_days{year{1899} / December / 30} + std::chrono::days{days}};
    return originsOf(static_cast<int>(static_cast<unsigned>(date.day())),
                     static_cast<int>(static_cast<unsigned>(date.month())), static_cast<int>(date.year()), false);
}

} // namespace

DateText readDate(std::string_view text) {
    if (const auto clock = text.find(" 00:00"); clock != text.npos) text = text.substr(0, clock);
    if (const auto serial = serialDay(text); serial.isDate) return serial;
    const Parts parts = partsOf(text);
    if (!parts.sound) return {};
    return parts.month ? namedMonth(parts) : threeNumbers(parts);
}

} // namespace hammerline
