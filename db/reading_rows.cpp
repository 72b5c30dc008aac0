#include "db/reading_rows.h"

#include "db/versions.h"

#include <algorithm>

namespace hammerline {
namespace {

Relation relationOf(const std::string& sign) {
    if (sign == "<") return Relation::less;
    if (sign == ">") return Relation::more;
    return sign == ".." ? Relation::between : Relation::equal;
}

bool sameReading(const ReadingRow& a, const ReadingRow& b) {
    const auto said = [](const ReadingRow& row) {
        return std::tuple(row.notFitted, row.reading.count, row.reading.upper, row.reading.relation, row.reading.word);
    };
    return said(a) == said(b);
}

/// Rows of one trial that none of its rows replaces and that are not taken back.
std::vector<const ReadingRow*> currentOf(std::span<const ReadingRow> trial) {
    std::vector<const ReadingRow*> current;
    for (const ReadingRow& row : trial) {
        const bool replaced =
            std::any_of(trial.begin(), trial.end(), [&](const ReadingRow& other) { return other.replaces == row.act; });
        if (!replaced && !row.withdrawn) current.push_back(&row);
    }
    return current;
}

const ReadingRow* theLater(OpenBook& book, const std::vector<const ReadingRow*>& disputed) {
    const auto named = [&](const ReadingRow* row) {
        Query find =
            book.query("SELECT a.place, s.uuid FROM act a JOIN session s ON s.id = a.session_id WHERE a.id = ?");
        find << row->act;
        if (!find.step()) fail(RefusalCode::damagedBook, {}, "act");
        return std::pair(find.number(0), find.uuid(1));
    };
    return *std::max_element(disputed.begin(), disputed.end(),
                             [&](const auto* a, const auto* b) { return named(a) < named(b); });
}

} // namespace

std::vector<const ReadingRow*> enteredIn(std::span<const ReadingRow> trial) {
    std::vector<const ReadingRow*> first;
    for (const ReadingRow& row : trial)
        if (!row.withdrawn && !row.notFitted && std::none_of(first.begin(), first.end(), [&](const ReadingRow* other) {
                return other->trial == row.trial && other->origin == row.origin;
            }))
            first.push_back(&row);
    return first;
}

std::string readingRowsSql(std::string_view condition) {
    return "SELECT x.pass_id, x.note, x.dimension_id, x.trial, x.act_id, x.replaces, x.origin, x.withdrawn, "
           "x.relation, "
           "x.value, x.upper, x.word, x.typed, x.unit, x.taken, x.reason, o.place, o.at FROM reading x CROSS JOIN act "
           "o ON o.id = coalesce(x.origin, x.act_id) WHERE " +
           std::string(condition) + " ORDER BY x.pass_id, x.note, x.dimension_id, x.trial, x.act_id";
}

ReadingRow ReadingRows::row() const {
    ReadingRow row;
    row.trial = m_query.small(3);
    row.act = m_query.number(4);
    row.replaces = m_query.maybe(5);
    row.origin = m_query.maybe(6).value_or(row.act);
    row.withdrawn = m_query.number(7) != 0;
    const std::string relation = m_query.text(8);
    row.notFitted = relation == "not-fitted";
    Reading& reading = row.reading;
    reading.relation = relationOf(relation);
    reading.count = m_query.maybe(9).value_or(0);
    reading.upper = m_query.maybe(10).value_or(0);
    if (!m_query.null(11))
        if (const auto word = findWord(m_query.text(11), m_cell.cell.dimension)) reading.word = *word;
    reading.typed = m_query.text(12);
    reading.typedUnit = m_query.text(13);
    reading.taken = m_query.number(14) != 0;
    reading.reason = m_query.text(15);
    reading.trial = row.trial;
    reading.order = m_query.number(16);
    reading.at = m_query.number(17);
    return row;
}

const CellRows* ReadingRows::nextCell() {
    while (m_more) {
        const auto name = [this] { return std::tuple(m_query.number(0), m_query.small(1), m_query.number(2)); };
        const auto here = name();
        const auto dimension = m_book.dimensionOf(std::get<2>(here));
        m_cell.pass = std::get<0>(here);
        m_cell.cell = {NoteNumber{std::get<1>(here)}, dimension.value_or(DimensionId{})};
        m_cell.rows.clear();
        do {
            if (dimension) m_cell.rows.push_back(row());
            m_more = m_query.step();
        } while (m_more && name() == here);
        if (dimension) return &m_cell;
    }
    return nullptr;
}

Measured measuredOf(OpenBook& book, const CellRows& cell) {
    Measured measured;
    std::size_t entered = 0, shown = 0;
    for (auto first = cell.rows.begin(); first != cell.rows.end();) {
        const auto end =
            std::find_if(first, cell.rows.end(), [&](const ReadingRow& row) { return row.trial != first->trial; });
        const std::span trial(first, end);
        entered += enteredIn(trial).size();
        const auto current = currentOf(trial);
        first = end;
        if (current.empty()) continue;
        const ReadingRow* used = current.size() == 1 ? current.front() : theLater(book, current);
        for (const ReadingRow* other : current)
            measured.disputed = measured.disputed || !sameReading(*other, *used);
        measured.notFitted = measured.notFitted || used->notFitted;
        if (used->notFitted) continue;
        measured.trials.push_back(used->reading);
        shown += current.size();
    }
    measured.superseded = entered > shown ? entered - shown : 0;
    return measured;
}

} // namespace hammerline
