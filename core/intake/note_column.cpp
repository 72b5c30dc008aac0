#include "core/intake/note_column.h"

#include "core/units/code_points.h"

namespace hammerline {
namespace {

bool beginsWith(std::string_view text, char letter) {
    return !text.empty() && (text.front() == letter || text.front() == letter - 'a' + 'A');
}

} // namespace

NoteColumn::NoteColumn(const Table& table, const Columns& columns, const Piano& piano)
    : m_piano(piano), m_columns(columns.notes) {
    for (std::size_t at = columns.headRow + 1; at < table.rows.size(); ++at)
        for (const Column& column : m_columns) {
            if (column.index >= table.rows[at].size()) continue;
            const auto text = trimmedAscii(table.rows[at][column.index]);
            if (beginsWith(text, 'h') && parseNote(text, piano)) m_hForB = true;
        }
}

std::string NoteColumn::asNamed(std::string_view text) const {
    std::string name{trimmedAscii(text)};
    const bool flatAlready = name.size() > 1 && (name[1] == 'b' || name[1] == '#' || name.find("♭") == 1);
    if (m_hForB && beginsWith(name, 'b') && !flatAlready) name.insert(1, "b");
    return name;
}

Outcome<NoteNumber> NoteColumn::read(const std::vector<std::string>& fields) const {
    std::optional<NoteNumber> note;
    std::string said;
    for (const Column& column : m_columns) {
        if (column.index >= fields.size() || trimmedAscii(fields[column.index]).empty()) continue;
        said += (said.empty() ? "" : " ") + fields[column.index];
        const auto each = parseNote(asNamed(fields[column.index]), m_piano);
        if (!each || (note && *note != *each)) return refuse(RefusalCode::unknownNote, said);
        note = *each;
    }
    if (!note) return refuse(RefusalCode::unknownNote);
    return *note;
}

} // namespace hammerline
