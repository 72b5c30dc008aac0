#include "ui/stations/measure_paste.h"

#include <algorithm>

namespace hammerline {

bool isBareBlock(const QString& text) {
    const QString first = text.section(u'\n', 0, 0);
    return std::none_of(first.begin(), first.end(), [](QChar c) { return c.isLetter(); }) || !text.contains(u'\n') ||
           first.split(u'\t').size() == 1;
}

Intake layDown(const Workbench& bench, const QString& block, Cell from, const std::vector<DimensionId>& columns) {
    Intake intake;
    const Piano& piano = *bench.piano();
    const auto start = std::find(columns.begin(), columns.end(), from.dimension) - columns.begin();
    QStringList lines = block.split(u'\n');
    while (!lines.isEmpty() && lines.last().trimmed().isEmpty())
        lines.removeLast();
    std::map<std::size_t, int> notes; // next note of each column
    for (qsizetype l = 0; l < lines.size(); ++l) {
        const QStringList fields = lines[l].remove(u'\r').split(u'\t');
        for (qsizetype f = 0; f < fields.size(); ++f) {
            const auto column = static_cast<std::size_t>(start + f);
            const std::string text = fields[f].trimmed().toStdString();
            if (column >= columns.size()) break;
            // a single column skips the notes that have no such part; several keep their rows together
            int& note = notes.try_emplace(column, from.note.value).first->second;
            if (fields.size() > 1)
                note = from.note.value + static_cast<int>(l);
            else
                while (note <= piano.notes && !fitted(columns[column], {note}, piano))
                    ++note;
            const Cell cell{{note}, columns[column]};
            const Place place{"", static_cast<int>(l) + 1, static_cast<int>(f) + 1, ""};
            ++note;
            if (text.empty()) continue;
            if (!piano.contains(cell.note) || !fitted(cell.dimension, cell.note, piano)) {
                intake.refused.push_back({place.line, place.column, std::to_string(cell.note.value), cell.dimension,
                                          text, Doubt::unknownNote, RefusalCode::notFitted});
                continue;
            }
            auto entry = bench.understand(text, cell);
            if (!entry)
                intake.refused.push_back({place.line, place.column, std::to_string(cell.note.value), cell.dimension,
                                          text, Doubt::unreadable, entry.error().code});
            else if (entry->question)
                entry->question->place = place, intake.questions.push_back(*entry->question);
            else if (entry->sound)
                intake.sound.push_back({cell, *entry->sound, place.line, {}});
        }
    }
    return intake;
}

} // namespace hammerline
