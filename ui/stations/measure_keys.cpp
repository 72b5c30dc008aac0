// The keys of the grid that act at once: words, repeat, take back, same as above, not fitted, quick look, paste.
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_view.h"

#include <QApplication>
#include <QClipboard>
#include <QKeyEvent>

#include <algorithm>

namespace hammerline {

std::span<const WordKey> wordKeys() {
    static constexpr std::array kKeys{
        WordKey{Qt::Key_B, word::blocks},  WordKey{Qt::Key_L, word::noLetOff}, WordKey{Qt::Key_C, word::doesNotCheck},
        WordKey{Qt::Key_O, word::offRail}, WordKey{Qt::Key_K, word::ok},       WordKey{Qt::Key_T, word::tight},
        WordKey{Qt::Key_S, word::slack},   WordKey{Qt::Key_X, word::torn},     WordKey{Qt::Key_E, word::early},
        WordKey{Qt::Key_K, word::right},   WordKey{Qt::Key_L, word::late},
    };
    return kKeys;
}

namespace {

bool hasWord(DimensionId dimension, WordId id) {
    const auto allowed = row(dimension).words;
    return std::find(allowed.begin(), allowed.end(), id) != allowed.end();
}

/// Words that say the note does not work at all belong to one dimension and may be entered from any cell of the note.
bool entersFromAnywhere(WordId id) {
    return id == word::blocks || id == word::noLetOff || id == word::doesNotCheck || id == word::offRail;
}

} // namespace

std::optional<std::pair<Cell, WordId>> wordFor(Qt::Key key, Cell current, const Piano& piano) {
    // the particular word before the general ok: K at the damper is "right"
    for (const bool general : {false, true})
        for (const WordKey& row : wordKeys())
            if (row.key == key && (row.word == word::ok) == general && hasWord(current.dimension, row.word))
                return std::pair{current, row.word};
    for (const WordKey& row : wordKeys()) {
        if (row.key != key || !entersFromAnywhere(row.word)) continue;
        for (const Dimension& dimension : dimensions())
            if (hasWord(dimension.id, row.word) && fitted(dimension.id, current.note, piano))
                return std::pair{Cell{current.note, dimension.id}, row.word};
    }
    return {};
}

Reading wordReading(WordId id) {
    Reading reading;
    reading.word = id;
    reading.typed = std::string(row(id).key);
    return reading;
}

void MeasureView::keyPressEvent(QKeyEvent* event) {
    if (m_editor) return event->ignore(); // what the open field does not use means nothing here
    if (takeLetter(event)) return event->accept();
    const bool shift = event->modifiers() & Qt::ShiftModifier;
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return advance(shift ? -1 : 1);
    case Qt::Key_Tab:
        return moveTo(neighbour(currentIndex(), 0, 1));
    case Qt::Key_Backtab:
        return moveTo(neighbour(currentIndex(), 0, -1));
    case Qt::Key_F2:
        edit(currentIndex(), EditKeyPressed, event);
        return;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        return withdrawSelected();
    default:
        break;
    }
    if (event->matches(QKeySequence::Paste)) return pasteText(QApplication::clipboard()->text());
    if (event->matches(QKeySequence::Copy)) {
        QApplication::clipboard()->setText(currentIndex().data().toString());
        return;
    }
    QTableView::keyPressEvent(event);
}

bool MeasureView::takeLetter(QKeyEvent* event) {
    if (!currentIndex().isValid() || !m_bench.piano()) return false;
    const auto key = static_cast<Qt::Key>(event->key());
    if (event->modifiers() == Qt::ControlModifier && key == Qt::Key_D) return fillDown(), true;
    if (event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) return false;
    switch (key) {
    case Qt::Key_Asterisk:
        return copyFromAbove(), true;
    case Qt::Key_R:
        return repeatReading(), true;
    case Qt::Key_N:
        return markNotFitted(), true;
    case Qt::Key_Y:
        return quickLook(), true;
    case Qt::Key_BracketLeft:
        return moveTo(neighbour(currentIndex(), 0, -1)), true;
    case Qt::Key_BracketRight:
        return moveTo(neighbour(currentIndex(), 0, 1)), true;
    default:
        break;
    }
    if (std::none_of(wordKeys().begin(), wordKeys().end(), [key](const WordKey& row) { return row.key == key; }))
        return false;
    return enterWord(key), true;
}

void MeasureView::enterWord(Qt::Key key) {
    const Cell here = m_model->cellAt(currentIndex());
    const auto meant = wordFor(key, here, *m_bench.piano());
    if (!meant || !store(meant->first, wordReading(meant->second), false)) return;
    if (meant->first == here) advance(1);
}

/// "This note is right": ok in every dimension of the note that has no reading yet, as one act.
void MeasureView::quickLook() {
    const int note = currentIndex().row();
    std::vector<NewReading> found;
    for (int c = 0; c < m_model->columnCount(); ++c) {
        const QModelIndex index = m_model->index(note, c);
        const auto state = m_model->lookAt(index).state;
        if (state != CellLook::State::empty && state != CellLook::State::expected) continue;
        const Cell cell = m_model->cellAt(index);
        if (hasWord(cell.dimension, word::ok))
            found.push_back({cell, wordReading(word::ok)});
        else if (hasWord(cell.dimension, word::right))
            found.push_back({cell, wordReading(word::right)});
    }
    if (!found.empty()) {
        if (const auto stored = m_bench.enterAll(found, "entry"); !stored) {
            Q_EMIT refused(stored.error());
            return;
        }
    }
    moveTo(neighbour(currentIndex(), 1, 0));
}

void MeasureView::copyFromAbove() {
    const QModelIndex here = currentIndex();
    const Pass* pass = m_bench.pass();
    if (!pass || !m_model->canHold(here)) return;
    for (int r = here.row() - 1; r >= 0; --r) {
        const Measured* above = pass->at(m_model->cellAt(m_model->index(r, here.column())));
        if (!above || above->missing()) continue;
        Reading same = above->trials.back();
        same.trial = 1;
        if (store(m_model->cellAt(here), same, false)) advance(1);
        return;
    }
}

/// Every selected empty cell takes the reading at the top of its column; with one cell chosen, that of the row above.
void MeasureView::fillDown() {
    const Pass* pass = m_bench.pass();
    const QModelIndexList chosen = selectedIndexes();
    if (!pass) return;
    if (chosen.size() <= 1) return copyFromAbove();
    int top = m_model->rowCount();
    for (const QModelIndex& index : chosen)
        top = std::min(top, index.row());
    std::vector<NewReading> filled;
    for (const QModelIndex& index : chosen) {
        const Measured* first = pass->at(m_model->cellAt(m_model->index(top, index.column())));
        if (index.row() == top || !first || first->missing() || !m_model->canHold(index)) continue;
        const auto state = m_model->lookAt(index).state;
        if (state != CellLook::State::empty && state != CellLook::State::expected) continue;
        Reading same = first->trials.back();
        same.trial = 1;
        filled.push_back({m_model->cellAt(index), same});
    }
    if (filled.empty()) return;
    if (const auto stored = m_bench.enterAll(filled, "entry"); !stored) Q_EMIT refused(stored.error());
}

void MeasureView::repeatReading() {
    if (m_editor) {
        m_editor->setRepeat(true);
        return;
    }
    if (!m_model->canHold(currentIndex())) return;
    edit(currentIndex(), AllEditTriggers, nullptr);
    if (m_editor) {
        m_editor->setRepeat(true);
        m_editor->setPlaceholderText(tr("again"));
    }
}

void MeasureView::markNotFitted() {
    const Cell here = m_model->cellAt(currentIndex());
    const auto next = m_walk.step(here, 1);
    if (const auto marked = m_bench.markNotFitted(here); !marked) {
        Q_EMIT refused(marked.error());
        return;
    }
    if (next) moveTo(m_model->indexOf(*next));
}

void MeasureView::withdrawSelected() {
    for (const QModelIndex& index : selectedIndexes()) {
        const Cell cell = m_model->cellAt(index);
        const Measured* measured = m_bench.pass() ? m_bench.pass()->at(cell) : nullptr;
        if (!measured || (measured->missing() && !measured->notFitted)) continue;
        if (const auto taken = m_bench.withdraw(cell); !taken) {
            Q_EMIT refused(taken.error());
            return;
        }
    }
}

void MeasureView::pasteText(const QString& text) {
    if (!text.trimmed().isEmpty()) Q_EMIT pasted(text);
}

} // namespace hammerline
