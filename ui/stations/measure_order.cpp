#include "ui/stations/measure_order.h"

#include "core/history/adjusted.h"
#include "core/reserve/settling.h"
#include "ui/words/said.h"

#include <QCoreApplication>

#include <algorithm>
#include <set>
#include <sstream>

namespace hammerline {

const std::vector<QString>& entryOrderIds() {
    static const std::vector<QString> ids{QStringLiteral("up"),           QStringLiteral("note-by-note"),
                                          QStringLiteral("naturals"),     QStringLiteral("every-nth"),
                                          QStringLiteral("section-ends"), QStringLiteral("only-out"),
                                          QStringLiteral("own-list"),     words::utf8(kAskWhatSettles),
                                          QStringLiteral("samples"),      QStringLiteral("adjusted")};
    return ids;
}

QString entryOrderName(EntryOrder::Kind kind) {
    static constexpr std::array kNames{QT_TRANSLATE_NOOP("EntryOrder", "One dimension"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Note by note"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Naturals, then sharps"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Every n-th note…"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Section ends"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Only what was out"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Own list…"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "What has settled"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "Sample notes"),
                                       QT_TRANSLATE_NOOP("EntryOrder", "What was adjusted")};
    return QCoreApplication::translate("EntryOrder", kNames[static_cast<std::size_t>(kind)]);
}

QString entryOrderName(const EntryOrder& order) {
    QString name = entryOrderName(order.kind);
    name.remove(QChar(0x2026));
    if (!order.across || order.kind == EntryOrder::Kind::noteByNote) return name;
    return QCoreApplication::translate("EntryOrder", "%1, note by note").arg(name);
}

namespace {

/// In the order of the columns, then of the notes; `across`: note by note.
std::vector<Cell> inOrder(std::vector<Cell> cells, const std::vector<DimensionId>& columns, bool across) {
    std::erase_if(cells, [&](Cell cell) { return std::ranges::find(columns, cell.dimension) == columns.end(); });
    if (!across)
        std::ranges::stable_sort(cells, {}, [&](Cell cell) { return std::ranges::find(columns, cell.dimension); });
    return cells;
}

std::vector<Cell> whatSettles(const PianoRecord& record) {
    std::vector<Cell> cells;
    for (const SettlingCell& each : settlingCells(record))
        cells.push_back(each.cell);
    return cells;
}

} // namespace

EntryOrder entryOrderOf(const PianoRecord* record) {
    EntryOrder order;
    if (!record) return order;
    const auto kept = record->preferences.find(std::string(kEntryOrderPreference));
    if (kept == record->preferences.end()) return order;
    std::istringstream words(kept->second);
    std::string word, value;
    words >> word;
    const auto& ids = entryOrderIds();
    const auto kind = std::ranges::find(ids, QString::fromStdString(word));
    if (kind != ids.end()) order.kind = static_cast<EntryOrder::Kind>(kind - ids.begin());
    while (words >> word) {
        if (word == "across") order.across = true;
        if (word == "every" && words >> value) order.every = std::max(1, QString::fromStdString(value).toInt());
        if (word == "notes" && std::getline(words, value)) // the last: a list has blanks
            if (const auto notes = parseNotes(value, record->piano)) order.listed = *notes;
    }
    return order;
}

Outcome<void> keepEntryOrder(Workbench& bench, const EntryOrder& order) {
    if (!bench.record() || entryOrderOf(bench.record()) == order) return {};
    QStringList words{entryOrderIds()[static_cast<std::size_t>(order.kind)]};
    if (order.every != EntryOrder{}.every) words << QStringLiteral("every") << QString::number(order.every);
    if (order.across) words << QStringLiteral("across");
    if (!order.listed.empty()) words << QStringLiteral("notes") << QString::fromStdString(writeNotes(order.listed));
    return bench.setPreference(kEntryOrderPreference, words.join(u' ').toStdString());
}

OrderEnd endOf(const EntryOrder& order, const EntryWalk& walk) {
    const auto say = [](const char* text) { return QCoreApplication::translate("EntryOrder", text); };
    if (walk.size() == 0)
        return {say(QT_TRANSLATE_NOOP("EntryOrder", "\u201C%1\u201D: there is no note to read."))
                    .arg(entryOrderName(order)),
                say(QT_TRANSLATE_NOOP("EntryOrder", "F3 takes another order; a cell chosen by hand takes a reading."))};
    return {say(QT_TRANSLATE_NOOP("EntryOrder", "The order ends here; this cell has its reading.")),
            say(QT_TRANSLATE_NOOP("EntryOrder", "Go on with an arrow, Ctrl+G or another order (F3). F2 corrects it."))};
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
    case Order::samples:
        listed = sampleNotes(*bench.piano());
        walkOrder = WalkOrder::listed;
        break;
    case Order::settled:
    case Order::adjusted:
        break; // cells of their own, see below
    }
    m_cells = walk(walkOrder, *bench.piano(), columns, order.every, across, listed);
    if (order.kind == Order::settled) m_cells = inOrder(whatSettles(*bench.record()), columns, across);
    if (order.kind == Order::adjusted)
        m_cells = inOrder(adjustedCells(*bench.record(), bench.passNumber()), columns, across);
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
    if (best || by < 0) return best;
    // none further on: what the order has after the last cell of this dimension, never back to where it began
    const auto last =
        std::find_if(m_cells.rbegin(), m_cells.rend(), [from](Cell cell) { return cell.dimension == from.dimension; });
    return last == m_cells.rend() || last == m_cells.rbegin() ? std::nullopt : std::optional(*(last - 1));
}

} // namespace hammerline
