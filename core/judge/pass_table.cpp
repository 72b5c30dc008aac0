#include "core/judge/pass_table.h"

#include <algorithm>

namespace hammerline {

PassTable::PassTable(const Piano& piano, const Pass& pass)
    : m_notes(piano.notes)
    , m_cells(dimensions().size() * static_cast<std::size_t>(piano.notes), nullptr)
    , m_counts(m_cells.size()) {
    for (const auto& [cell, measured] : pass.cells) {
        const std::size_t at = place(cell);
        if (at >= m_cells.size()) continue;
        m_cells[at] = &measured;
        if (!measured.notFitted && !measured.word()) m_counts[at] = measured.value();
    }
}

std::size_t PassTable::place(Cell cell) const {
    if (cell.note.value < 1 || cell.note.value > m_notes) return static_cast<std::size_t>(-1);
    return cell.dimension.row * static_cast<std::size_t>(m_notes) + static_cast<std::size_t>(cell.note.value - 1);
}

const Measured* PassTable::at(Cell cell) const {
    const std::size_t at = place(cell);
    return at < m_cells.size() ? m_cells[at] : nullptr;
}

std::optional<std::int64_t> PassTable::count(Cell cell) const {
    const std::size_t at = place(cell);
    return at < m_counts.size() ? m_counts[at] : std::nullopt;
}

std::optional<double> PassTable::value(Cell cell) const {
    const auto found = count(cell);
    return found ? std::optional(toTrade(*found, row(cell.dimension).kind)) : std::nullopt;
}

std::optional<WordId> PassTable::word(Cell cell) const {
    const Measured* measured = at(cell);
    return measured && !measured->notFitted ? measured->word() : std::nullopt;
}

int PassTable::repeats(Cell cell) const {
    const Measured* measured = at(cell);
    if (!measured) return 0;
    return static_cast<int>(std::count_if(measured->trials.begin(), measured->trials.end(),
                                          [](const Reading& r) { return !r.word && r.relation == Relation::equal; }));
}

} // namespace hammerline
