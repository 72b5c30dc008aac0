#include "ui/stations/measure_order.h"

#include <QCoreApplication>

#include <algorithm>
#include <set>

namespace hammerline {

const std::vector<QString>& entryOrderIds() {
    static const std::vector<QString> ids{QStringLiteral("up"),           QStringLiteral("note-by-note"),
                                          QStringLiteral("naturals"),     QStringLiteral("every-nth"),
                                          QStringLiteral("section-ends"), QStringLiteral("only-out"),
                                          QStringLiteral("own-list")};
    return ids;
}

QString entryOrderName(EntryOrder::Kind kind) {
    static constexpr std::array kNames{QT_TRANSLATE_NOOP("EntryOrder", "One dimension"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Note by note"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Naturals, then sharps"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Every n-th note…"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Section ends"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Only what was out"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Own list…")};
    return QCoreApplication::translate("EntryOrder", kNames[static_cast<std::size_t>(kind)]);
}

std::vector<NoteNumber> notesOut(const Workbench& bench) {
    const PassView* view = bench.view(bench.passNumber() - 1);
    if (!view) view = bench.view();
    std::set<NoteNumber> notes;
    if (view)
        for (const Judged& judged : view->review.ranked)
            if (judged.verdict == Verdict::low || judged.verdict == Verdict::high) notes.insert(judged.cell.note);
    return {notes.begin(), notes.end()};
}

EntryWalk::EntryWalk(const Workbench& bench, const EntryOrder& order, const std::vector<DimensionId>& columns) {
    if (!bench.piano()) return;
    using Order = EntryOrder::Kind;
    const bool across = order.across || order.kind == Order::noteByNote;
    std::vector<NoteNumber> listed = order.listed;
    WalkOrder walkOrder = WalkOrder::up;
    switch (order.kind) {
    case Order::oneDimension:
    case Order::noteByNote:
        break;
    case Order::naturalsThenSharps:
        walkOrder = WalkOrder::naturalsThenSharps;
        break;
    case Order::everyNth:
        walkOrder = WalkOrder::everyNth;
        break;
    case Order::sectionEnds:
        walkOrder = WalkOrder::sectionEnds;
        break;
    case Order::onlyOut:
        listed = notesOut(bench);
        [[fallthrough]];
    case Order::ownList:
        walkOrder = WalkOrder::listed;
        break;
    }
    m_cells = walk(walkOrder, *bench.piano(), columns, order.every, across, listed);
    if (const Pass* pass = bench.pass())
        std::erase_if(m_cells, [pass](Cell cell) {
            const Measured* measured = pass->at(cell);
            return measured && measured->notFitted;
        });
    for (std::size_t i = 0; i < m_cells.size(); ++i)
        m_places.emplace(m_cells[i], i);
}

std::optional<Cell> EntryWalk::first() const {
    return m_cells.empty() ? std::nullopt : std::optional(m_cells.front());
}

std::optional<Cell> EntryWalk::step(Cell from, int by) const {
    if (m_cells.empty()) return {};
    const auto here = m_places.find(from);
    if (here != m_places.end()) {
        const auto next = static_cast<std::ptrdiff_t>(here->second) + by;
        if (next < 0 || next >= static_cast<std::ptrdiff_t>(m_cells.size())) return {};
        return m_cells[static_cast<std::size_t>(next)];
    }
    // off the walk: the nearest note in that direction of the same dimension
    std::optional<Cell> best;
    for (const Cell cell : m_cells) {
        if (cell.dimension != from.dimension || (cell.note.value - from.note.value) * by <= 0) continue;
        if (!best || std::abs(cell.note.value - from.note.value) < std::abs(best->note.value - from.note.value))
            best = cell;
    }
    return best ? best : by > 0 ? first() : std::nullopt;
}

} // namespace hammerline
