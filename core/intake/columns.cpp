#include "core/intake/columns.h"

#include "core/units/code_points.h"

#include <algorithm>

namespace hammerline {
namespace {

using Use = ColumnUse::Use;

constexpr std::size_t kTitleRows = 12; // a head is looked for in so many leading rows

/// "dip 2" is the second reading of the dip, when "dip" is a head and "dip 2" is none.
int takeTrial(std::string& head) {
    const auto last = head.empty() ? '0' : head.back();
    if (last < '1' || last > '9' || head.size() < 3) return 1;
    const auto words = trimmedAscii(std::string_view{head}.substr(0, head.size() - 1));
    const bool apart = words.size() + 1 < head.size() || words.ends_with('_') || words.ends_with('#');
    if (!apart || headerMeaning(words).use != Use::dimension) return 1;
    head = std::string{words};
    return last - '0';
}

bool unitFits(DimensionId id, Unit unit) {
    const bool alsoShare = id == dimension::damperStart && unit == Unit::percent;
    const bool alsoLength = id == dimension::halfBlow && kindOf(unit) == Kind::length;
    return kindOf(unit) == row(id).kind || alsoShare || alsoLength;
}

Unit bareUnit(const ColumnUse& use, const TableOptions& options) {
    const DimensionId id = *use.dimension;
    if (const auto said = options.units.find(id); said != options.units.end()) return said->second;
    if (use.unit) return *use.unit;
    const auto reference = options.references.find(id);
    const bool share =
        id == dimension::damperStart && reference != options.references.end() && reference->second == "percent";
    return share ? Unit::percent : row(id).entryUnit;
}

Column columnOf(std::size_t index, const std::string& head, const TableOptions& options) {
    Column column;
    column.index = index;
    column.use.header = head;
    const auto byHand = options.columns.find(head);
    std::string words = head;
    if (byHand == options.columns.end()) column.trial = takeTrial(words);
    const HeaderMeaning meaning = headerMeaning(words);
    column.use.use = meaning.use;
    column.use.dimension = meaning.dimension;
    column.use.unit = meaning.unit;
    if (byHand != options.columns.end()) {
        column.use.use = Use::dimension;
        column.use.dimension = byHand->second;
    }
    if (column.use.use != Use::dimension) return column;
    if (column.use.unit && !unitFits(*column.use.dimension, *column.use.unit)) column.use.use = Use::ambiguous;
    column.bare = bareUnit(column.use, options);
    return column;
}

std::vector<Column> columnsOf(const std::vector<std::string>& heads, const TableOptions& options) {
    std::vector<Column> columns;
    for (std::size_t i = 0; i < heads.size(); ++i)
        columns.push_back(columnOf(i, std::string{trimmedAscii(heads[i])}, options));
    return columns;
}

bool has(const std::vector<Column>& columns, Use use) {
    return std::any_of(columns.begin(), columns.end(), [&](const Column& c) { return c.use.use == use; });
}

int readingOrder(DimensionId id) {
    if (id == dimension::blow) return 0;
    return id == dimension::letOff ? 1 : 2;
}

void sortOut(Columns& columns, const Piano& piano) {
    for (Column& each : columns.all) {
        // a column of what this action has not got (a drop on an upright) is passed over as a whole
        if (each.use.use == Use::dimension && !fittedAnywhere(*each.use.dimension, piano)) each.use.use = Use::ignored;
        if (each.use.use == Use::note) columns.notes.push_back(each);
        if (each.use.use == Use::dimension) columns.dimensions.push_back(each);
    }
    std::stable_sort(columns.dimensions.begin(), columns.dimensions.end(), [](const Column& a, const Column& b) {
        return readingOrder(*a.use.dimension) < readingOrder(*b.use.dimension);
    });
}

} // namespace

Outcome<Columns> findColumns(const Table& table, const Piano& piano, const TableOptions& options) {
    bool anyNote = false;
    for (std::size_t at = 0; at < std::min(table.rows.size(), kTitleRows); ++at) {
        Columns columns;
        columns.headRow = at;
        columns.all = columnsOf(table.rows[at], options);
        anyNote = anyNote || has(columns.all, Use::note);
        const bool measures = has(columns.all, Use::dimension) || has(columns.all, Use::ambiguous);
        if (!has(columns.all, Use::note) || !measures) continue;
        sortOut(columns, piano);
        return columns;
    }
    return refuse(RefusalCode::badTable, {}, anyNote ? "dimension-column" : "note-column",
                  Place{{}, table.lines.front(), 1, {}});
}

} // namespace hammerline
