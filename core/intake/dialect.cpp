#include "core/intake/dialect.h"

#include "core/intake/records.h"
#include "core/units/code_points.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::size_t kLooked = 30; // records that are looked at

/// How many records have as many fields as the first, which has more than one; 0 where the separator does not cut.
std::size_t alikeRecords(std::string_view text, char separator) {
    RecordReader reader(text, separator);
    std::vector<std::string> fields;
    std::size_t width = 0;
    std::size_t alike = 0;
    for (std::size_t n = 0; n < kLooked; ++n) {
        const auto more = reader.next(fields, width);
        const bool endless = !more && more.error().detail == "too-many-columns";
        if (endless) return kLooked + 1; // it does cut, and the reader refuses the line by its name
        if (!more || !*more) break;
        if (width == 0) width = fields.size();
        if (width == 1) return 0;
        if (fields.size() == width) ++alike;
    }
    return alike;
}

struct Marks {
    bool commas = false;
    bool points = false;
};

/// What a number says about its mark: nothing where three digits follow a short whole number (thousands?), unless the
/// whole is 0.
void readMarks(std::string_view cell, Marks& marks) {
    cell = trimmedAscii(cell);
    if (!cell.empty() && (cell.front() == '-' || cell.front() == '+' || cell.front() == '<' || cell.front() == '>'))
        cell.remove_prefix(1);
    const auto digitsFrom = [&](std::size_t at) {
        std::size_t end = at;
        while (end < cell.size() && isDigit(static_cast<unsigned char>(cell[end])))
            ++end;
        return end - at;
    };
    const std::size_t whole = digitsFrom(0);
    if (whole >= cell.size() || (cell[whole] != '.' && cell[whole] != ',')) return;
    const std::size_t decimals = digitsFrom(whole + 1);
    const std::size_t end = whole + 1 + decimals;
    if (decimals == 0) return;
    if (end < cell.size() && (cell[end] == '.' || cell[end] == ',')) { // 1.234,5
        const bool grouped = decimals == 3 && cell[end] != cell[whole];
        if (grouped) (cell[end] == ',' ? marks.commas : marks.points) = true;
        return;
    }
    const bool open = decimals == 3 && whole >= 1 && whole <= 3 && cell[0] != '0';
    if (!open) (cell[whole] == ',' ? marks.commas : marks.points) = true;
}

} // namespace

std::optional<SeparatorLine> separatorLine(std::string_view text) {
    std::string_view line = text.substr(0, text.find_first_of("\r\n"));
    std::size_t length = line.size();
    if (text.substr(length).starts_with("\r\n")) ++length;
    if (length < text.size()) ++length;
    if (line.size() == 7 && line.front() == '"' && line.back() == '"') line = line.substr(1, 5);
    if (line.size() != 5 || folded(line.substr(0, 4)) != "sep=") return std::nullopt;
    return SeparatorLine{line[4], length};
}

char findSeparator(std::string_view text) {
    char best = ',';
    std::size_t most = 0;
    for (const char separator : {'\t', ';', ',', '|'}) {
        const std::size_t alike = alikeRecords(text, separator);
        if (alike > most) {
            most = alike;
            best = separator;
        }
    }
    return best;
}

std::optional<char> findDecimal(const std::vector<std::vector<std::string>>& rows) {
    Marks marks;
    for (const auto& row : rows)
        for (const std::string& cell : row)
            readMarks(cell, marks);
    if (marks.commas == marks.points) return std::nullopt;
    return marks.commas ? ',' : '.';
}

} // namespace hammerline
