// The keys of the grid that act at once: words, repeat, take back, same as above, not fitted, quick look, paste.
#include "ui/stations/measure_acts.h"
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_view.h"

#include <QKeyEvent>

#include <algorithm>

namespace hammerline {

void MeasureView::keyPressEvent(QKeyEvent* event) {
    if (m_editor) return event->ignore(); // what the open field does not use means nothing here
    if (refuses(*event)) return event->accept();
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
        chosen();
        edit(currentIndex(), EditKeyPressed, event);
        return;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        return withdrawSelected();
    default:
        break;
    }
    switch (event->key()) {
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Home:
    case Qt::Key_End:
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
        chosen(); // also where it leads no further
        break;
    default:
        break;
    }
    QTableView::keyPressEvent(event);
    if (m_editor) event->accept(); // Qt gives on a key that has opened a field
}

bool MeasureView::takeLetter(QKeyEvent* event) {
    if (!currentIndex().isValid() || !m_bench.piano()) return false;
    const auto key = static_cast<Qt::Key>(event->key());
    if (event->modifiers() == Qt::ControlModifier && key == Qt::Key_D) return fillDown(), true;
    if (event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) return false;
    if (namesWordHere(key, m_model->cellAt(currentIndex()))) return enterWord(key), true;
    switch (key) {
    case Qt::Key_Asterisk:
        return copyFromAbove(), true;
    case Qt::Key_R:
        return repeatReading(), true;
    case Qt::Key_N:
        return markNotFitted(), true;
    case Qt::Key_Y:
        return (event->modifiers() & Qt::ShiftModifier ? restRight() : quickLook()), true;
    case Qt::Key_H:
        Q_EMIT howToAsked();
        return true;
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
    const auto meant = wordFor(key, here);
    if (!meant) return tell(true, wordElsewhere(m_bench, key, here), tr("Tab goes to the next dimension."));
    if (store(here, wordReading(*meant), false)) advance(1);
}

void MeasureView::quickLook() {
    const auto columns = m_bench.columns();
    const auto found = rightNote(m_bench, m_model->cellAt(currentIndex()).note, columns);
    if (!found.empty()) {
        if (const auto stored = m_bench.enterAll(found, "entry"); !stored) {
            Q_EMIT refused(stored.error());
            return;
        }
    }
    goOn(neighbour(currentIndex(), 1, 0));
}

void MeasureView::restRight() {
    const auto found = restOfColumnRight(m_bench, m_model->cellAt(currentIndex()));
    if (found.empty()) return;
    if (const auto stored = m_bench.enterAll(found, "entry"); !stored) Q_EMIT refused(stored.error());
}

void MeasureView::copyFromAbove() {
    const Cell here = m_model->cellAt(currentIndex());
    if (const auto same = sameAsBefore(m_bench, here); same && store(here, *same, false)) advance(1);
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
    chosen();
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
    goOn(next ? m_model->indexOf(*next) : QModelIndex());
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
