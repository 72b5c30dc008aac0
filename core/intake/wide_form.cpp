#include "core/intake/wide_form.h"

#include "core/intake/cell.h"
#include "core/intake/columns.h"
#include "core/intake/heights_in_file.h"
#include "core/intake/note_column.h"
#include "core/intake/outcome_rows.h"
#include "core/units/code_points.h"

#include <algorithm>
#include <tuple>

namespace hammerline {
namespace {

using Use = ColumnUse::Use;

/// Written where nothing was read.
bool isBlank(std::string_view cell) {
    const std::string text = folded(cell);
    return text.empty() || text == "-" || text == "–" || text == "—" || text == "n/a";
}

int columnNumber(const Column& column) {
    return static_cast<int>(column.index) + 1;
}

class WideReader {
public:
    WideReader(const Table& table, const Piano& piano, const TableOptions& options, Columns columns)
        : m_table(table)
        , m_piano(piano)
        , m_options(options)
        , m_columns(std::move(columns))
        , m_notes(table, m_columns, piano) {}

    Outcome<Intake> read() {
        m_intake.dialect = m_table.dialect;
        m_intake.references = m_options.references;
        describeColumns();
        for (std::size_t at = m_columns.headRow + 1; at < m_table.rows.size(); ++at) {
            readRow(m_table.rows[at], m_table.lines[at]);
            if (m_intake.questions.size() + m_intake.refused.size() > kMostAsked)
                return refuse(RefusalCode::badTable, {}, "too-many-asked", {{}, m_table.lines[at], 1, {}});
        }
        withdrawDisputed();
        askAboutHeights(m_intake, m_piano, m_options);
        sortByPlace(m_intake);
        return std::move(m_intake);
    }

private:
    /// The first reading of a cell and trial, and whether another one differs.
    struct Held {
        std::size_t sound{};
        int column{};
        bool disputed = false;
    };
    using Seen = std::map<std::tuple<Cell, int>, Held>;

    void describeColumns() {
        for (const Column& each : m_columns.all) {
            m_intake.columns.push_back(each.use);
            const bool passedOver = each.use.use == Use::ignored || each.use.use == Use::ambiguous;
            if (passedOver && !each.use.header.empty()) m_intake.ignoredColumns.push_back(each.use.header);
            if (each.use.use == Use::ambiguous) askAboutColumn(each);
        }
    }

    void askAboutColumn(const Column& column) {
        Question asked;
        asked.place = {{}, m_table.lines[m_columns.headRow], columnNumber(column), column.use.header};
        asked.text = column.use.header;
        asked.doubt = Doubt::unknownColumn;
        asked.slip = "ambiguous-column";
        asked.mayTake = false;
        if (column.use.dimension) asked.suggestion = key(*column.use.dimension);
        m_intake.questions.push_back(std::move(asked));
    }

    void readRow(const std::vector<std::string>& fields, int line) {
        if (std::all_of(fields.begin(), fields.end(), [](const std::string& f) { return isBlank(f); })) return;
        const auto note = m_notes.read(fields);
        if (!note) {
            refuseCell(line, columnNumber(m_columns.notes.front()), note.error().offending, std::nullopt,
                       note.error().offending, note.error().code);
            return;
        }
        CellContext context = contextOfRow();
        for (const Column& column : m_columns.dimensions)
            if (column.index < fields.size() && !isBlank(fields[column.index]))
                readField(fields[column.index], *note, column, line, context);
        for (std::size_t i = m_columns.all.size(); i < fields.size(); ++i)
            if (!isBlank(fields[i]))
                refuseCell(line, static_cast<int>(i) + 1, std::to_string(note->value), std::nullopt, fields[i],
                           RefusalCode::unknownColumn);
    }

    CellContext contextOfRow() const {
        CellContext context;
        context.piano = &m_piano;
        if (m_table.dialect.decimalSeen) context.decimal = m_table.dialect.decimal;
        const auto drop = m_options.references.find(dimension::drop);
        context.dropFromString = drop != m_options.references.end() && drop->second == "string";
        const auto height = m_options.references.find(dimension::keyHeight);
        context.heightsFromSlip = height != m_options.references.end() && height->second == "slip";
        return context;
    }

    void readField(const std::string& text, NoteNumber note, const Column& column, int line, CellContext& context) {
        context.bare = column.bare;
        const Cell cell{note, heightAsMeant(text, note, *column.use.dimension, context)};
        auto entry = readCell(text, cell, context);
        if (!entry) {
            refuseCell(line, columnNumber(column), std::to_string(note.value), cell.dimension, text,
                       entry.error().code);
            return;
        }
        if (entry->question) {
            if (entry->question->asTyped) entry->question->asTyped->trial = column.trial;
            entry->question->place = {{}, line, columnNumber(column), column.use.header};
            m_intake.questions.push_back(std::move(*entry->question));
            return;
        }
        if (entry->fromBed) m_intake.references[dimension::keyHeight] = "bed";
        const bool plain = !entry->sound->word && entry->sound->relation == Relation::equal;
        if (plain) context.known[cell.dimension] = entry->sound->count;
        entry->sound->trial = column.trial;
        hold(Sound{cell, std::move(*entry->sound), line, {}}, columnNumber(column));
    }

    /// The same reading twice is one; two that differ are both asked about (situation 67). Taken both on purpose they
    /// are repeats: the second becomes the next trial.
    void hold(Sound sound, int column) {
        const auto [found, fresh] =
            m_seen.try_emplace({sound.cell, sound.reading.trial}, Held{m_intake.sound.size(), column});
        if (fresh) {
            m_intake.sound.push_back(std::move(sound));
            return;
        }
        Held& first = found->second;
        if (sameReading(m_intake.sound[first.sound].reading, sound.reading)) return;
        if (!first.disputed)
            m_intake.questions.push_back(
                asQuestion(m_intake.sound[first.sound], first.column, Doubt::duplicate, "differing-readings"));
        first.disputed = true;
        ++sound.reading.trial;
        m_intake.questions.push_back(asQuestion(sound, column, Doubt::duplicate, "differing-readings"));
    }

    void withdrawDisputed() {
        std::vector<bool> withdrawn(m_intake.sound.size());
        for (const auto& [cell, held] : m_seen)
            if (held.disputed) withdrawn[held.sound] = true;
        std::size_t at = 0;
        std::erase_if(m_intake.sound, [&](const Sound&) { return withdrawn[at++]; });
    }

    void refuseCell(int line, int column, std::string note, std::optional<DimensionId> dimension, std::string text,
                    RefusalCode code) {
        m_intake.refused.push_back({line, column, std::move(note), dimension, std::move(text), doubtOf(code), code});
    }

    const Table& m_table;
    const Piano& m_piano;
    const TableOptions& m_options;
    Columns m_columns;
    NoteColumn m_notes;
    Seen m_seen;
    Intake m_intake;
};

} // namespace

Outcome<Intake> readWideForm(const Table& table, const Piano& piano, const TableOptions& options) {
    auto columns = findColumns(table, piano, options);
    if (!columns) return tl::unexpected{columns.error()};
    return WideReader(table, piano, options, std::move(*columns)).read();
}

} // namespace hammerline
