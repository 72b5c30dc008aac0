#include "core/survey/sizes.h"

#include "core/survey/size_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr double kThou = 0.0254;
constexpr std::size_t kLongestSizeWord = 40;
constexpr double kLargestSize = 2000; // mm or number

const SizeField* fieldOf(const SizeRow& row, std::string_view key) {
    const auto found = std::ranges::find(row.fields, key, &SizeField::key);
    return found == row.fields.end() ? nullptr : &*found;
}

std::optional<double> millimetres(const std::string& text) {
    const auto read = parseQuantity(text, Unit::mm);
    return read ? std::optional(toTrade(read->count, Kind::length)) : std::nullopt;
}

/// "20", "20.5" or "20 1/2".
std::optional<double> plainNumber(const std::string& text) {
    constexpr std::string_view kHalf = " 1/2";
    const bool half = text.ends_with(kHalf);
    const std::string whole = half ? text.substr(0, text.size() - kHalf.size()) : text;
    const bool digits = !whole.empty() && whole.find_first_not_of(half ? "0123456789" : "0123456789.,") == whole.npos;
    const auto read = digits ? millimetres(whole) : std::nullopt;
    return read ? std::optional(*read + (half ? 0.5 : 0)) : std::nullopt;
}

/// "20 1/2", "1.27", "0.050 in": as a plain number, in mm where it is a length.
std::optional<std::string> sizeValue(SizeUnit unit, const std::string& text) {
    if (unit == SizeUnit::word) {
        const bool plain = std::ranges::none_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x20; });
        return plain && text.size() <= kLongestSizeWord ? std::optional(text) : std::nullopt;
    }
    const auto value = unit == SizeUnit::number ? plainNumber(text) : millimetres(text);
    if (!value || *value <= 0 || *value > kLargestSize) return std::nullopt;
    return fmt::format("{:g}", std::round(*value * 1000) / 1000);
}

std::optional<NoteRange> rangeOf(const std::string& text) {
    const auto dash = text.find('-');
    const auto number = [](const std::string& digits) {
        const bool sane = !digits.empty() && digits.size() <= 3 && std::ranges::all_of(digits, ::isdigit);
        return sane ? std::stoi(digits) : 0;
    };
    const int first = number(text.substr(0, dash));
    const int last = dash == std::string::npos ? first : number(text.substr(dash + 1));
    return first >= 1 && last >= first ? std::optional(NoteRange{first, last}) : std::nullopt;
}

/// What holds at a note: the range's own, else what holds for all; of two the one said for fewer notes.
std::map<std::string, std::string> measuredAt(std::string_view supply, NoteNumber note,
                                              std::span<const PartSize> sizes) {
    std::map<std::string, std::string> out;
    std::map<std::string, int> width;
    for (const PartSize& each : sizes) {
        if (each.supply != supply || (each.notes && !each.notes->contains(note))) continue;
        const int wide = each.notes ? each.notes->last - each.notes->first : 1000;
        const auto before = width.find(each.field);
        if (before != width.end() && before->second < wide) continue;
        out[each.field] = each.value;
        width[each.field] = wide;
    }
    return out;
}

using BySize = std::vector<std::pair<std::map<std::string, std::string>, std::vector<NoteNumber>>>;

BySize grouped(const PartsLine& line, const std::vector<NoteNumber>& notes, std::span<const PartSize> sizes) {
    BySize groups;
    for (const NoteNumber note : notes) {
        auto measured = measuredAt(line.part, note, sizes);
        auto group = std::ranges::find(groups, measured, &BySize::value_type::first);
        if (group == groups.end()) group = groups.insert(groups.end(), {std::move(measured), {}});
        group->second.push_back(note);
    }
    return groups;
}

/// The notes that the pieces are for: of a set those that have the part, else those that were found.
std::vector<NoteNumber> orderedFor(const PartsLine& line, const Piano& piano) {
    const Part* part = findPart(line.from);
    if (!line.wholeSet || !part) return line.notes;
    std::vector<NoteNumber> all = notesOf(*part, piano);
    const bool fits = !all.empty() && line.needed % static_cast<int>(all.size()) == 0;
    return fits ? all : line.notes;
}

} // namespace

std::span<const SizeRow> sizeRows() {
    return survey::sizeRowsOfSupplies();
}

const SizeRow* sizeRow(std::string_view supply) {
    const auto rows = sizeRows();
    const auto found = std::ranges::find(rows, supply, &SizeRow::supply);
    return found == rows.end() ? nullptr : &*found;
}

Outcome<PartSize> parseSize(std::string_view name, std::string_view value) {
    const std::string_view where = name.find('@') == name.npos ? std::string_view{} : name.substr(name.find('@') + 1);
    const std::string_view of = name.substr(0, name.find('@'));
    const auto dot = of.find('.');
    PartSize out{std::string(of.substr(0, dot)), {}, {}, std::string(value)};
    const SizeRow* row = sizeRow(out.supply);
    if (!row) return refuse(RefusalCode::unknownPart, out.supply);
    const SizeField* field = dot == of.npos ? nullptr : fieldOf(*row, of.substr(dot + 1));
    const bool ranged = name.find('@') != name.npos;
    if (ranged) out.notes = rangeOf(std::string(where));
    if (!field || (ranged && !out.notes)) return refuse(RefusalCode::usage, std::string(name));
    out.field = field->key;
    if (value.empty()) return out;
    const auto read = sizeValue(field->unit, out.value);
    if (!read) return refuse(RefusalCode::usage, std::string(name) + '=' + out.value);
    out.value = *read;
    return out;
}

std::string sizeName(const PartSize& size) {
    std::string name = size.supply + '.' + size.field;
    if (size.notes) name += fmt::format("@{}-{}", size.notes->first, size.notes->last);
    return name;
}

bool sizeIsOdd(const PartSize& size) {
    const SizeRow* row = sizeRow(size.supply);
    const SizeField* field = row ? fieldOf(*row, size.field) : nullptr;
    if (!field || field->unit == SizeUnit::word || field->high <= 0) return false;
    const double value = std::strtod(size.value.c_str(), nullptr);
    return value < field->low || value > field->high;
}

std::vector<PartsLine> bySize(std::vector<PartsLine> lines, std::span<const PartSize> sizes, const Piano& piano) {
    std::vector<PartsLine> out;
    for (PartsLine& line : lines) {
        line.bySize = sizeRow(line.part) != nullptr;
        const std::vector<NoteNumber> notes = orderedFor(line, piano);
        const int count = static_cast<int>(notes.size());
        const auto groups = line.bySize ? grouped(line, notes, sizes) : BySize{};
        const bool evenly = line.unit == "piece" && count > 0 && line.needed % count == 0;
        if (groups.size() == 1) line.measured = groups.front().first;
        if (groups.size() < 2 || !evenly) {
            out.push_back(std::move(line));
            continue;
        }
        for (const auto& [measured, at] : groups) {
            PartsLine part = line;
            part.measured = measured;
            part.needed = line.needed / count * static_cast<int>(at.size());
            part.notes = at;
            std::erase_if(part.notes,
                          [&](NoteNumber n) { return std::ranges::find(line.notes, n) == line.notes.end(); });
            part.found = static_cast<int>(part.notes.size());
            out.push_back(std::move(part));
        }
    }
    return out;
}

double pinNumber(double mm) {
    return std::round((mm / kThou - 10)) / 2;
}

double pinDiameter(double number) {
    return (2 * number + 10) * kThou;
}

} // namespace hammerline
