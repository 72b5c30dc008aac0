// The field of the grid: opening it, storing what is typed before the cursor moves, and where each key goes on.
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_view.h"

#include <QKeyEvent>

namespace hammerline {

bool MeasureView::edit(const QModelIndex& index, EditTrigger trigger, QEvent* event) {
    if (m_editor) return false;
    const bool opened = QTableView::edit(index, trigger, event);
    if (auto* made = qobject_cast<ReadingEditor*>(indexWidget(index)); opened && made) {
        wire(made);
        if (trigger == EditKeyPressed || trigger == DoubleClicked)
            made->setInitial(index.data(Qt::EditRole).toString());
    }
    return opened;
}

void MeasureView::wire(ReadingEditor* field) {
    m_editor = field;
    connect(field, &ReadingEditor::finished, this, &MeasureView::afterFinish);
    connect(field, &ReadingEditor::taken, this, [this] {
        Reading reading = *m_editor->meaning().reading;
        reading.taken = true;
        if (store(m_editor->cell(), reading, m_editor->repeat())) leaveFieldFor(step(1));
    });
    connect(field, &ReadingEditor::abandoned, this, &MeasureView::closeField);
    connect(field, &ReadingEditor::left, this, [this] { (void)commitEditor(); });
    connect(field, &ReadingEditor::undoAsked, this, [this] {
        closeField();
        Q_EMIT undoAsked();
    });
    connect(field, &ReadingEditor::redoAsked, this, [this] {
        closeField();
        Q_EMIT redoAsked();
    });
    Q_EMIT editingChanged();
}

void MeasureView::closeField() {
    if (!m_editor) return;
    ReadingEditor* field = m_editor;
    m_editor = nullptr;
    const bool hadFocus = field->hasFocus();
    closeEditor(field, QAbstractItemDelegate::NoHint);
    if (hadFocus) setFocus();
    Q_EMIT editingChanged();
}

bool MeasureView::store(Cell cell, const Reading& reading, bool repeat) {
    const auto stored = repeat ? m_bench.repeat(cell, reading) : m_bench.enter(cell, reading);
    if (!stored) Q_EMIT refused(stored.error());
    return stored.has_value();
}

/// Stores what is being typed; the field stands yet. False: it asks or refuses.
bool MeasureView::storeTyped() {
    if (!m_editor) return true;
    using Meaning = Understanding::Kind;
    // an emptied field is no reading, and takes none back: Del does
    if (!m_editor->changed() || m_editor->meaning().kind == Meaning::empty) return true;
    if (m_editor->meaning().kind != Meaning::sound) {
        m_editor->ask();
        return false;
    }
    return store(m_editor->cell(), *m_editor->meaning().reading, m_editor->repeat());
}

bool MeasureView::commitEditor() {
    if (!storeTyped()) return false;
    closeField();
    return true;
}

/// Scrolls first and closes then: where a field has just been hidden the picture is void, and a view that scrolls over
/// such a place cannot move what it has painted but paints every cell again, at every Enter.
void MeasureView::leaveFieldFor(const QModelIndex& next) {
    if (next.isValid()) scrollTo(next);
    closeField();
    goOn(next);
}

void MeasureView::afterFinish(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    if (storeTyped()) leaveFieldFor(after(key, modifiers));
}

/// Where a key that ends a field goes on.
QModelIndex MeasureView::after(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    const QModelIndex here = currentIndex();
    switch (key) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return step(modifiers & Qt::ShiftModifier ? -1 : 1);
    case Qt::Key_Up:
        return neighbour(here, -1, 0);
    case Qt::Key_Down:
        return neighbour(here, 1, 0);
    case Qt::Key_Left:
    case Qt::Key_Backtab:
        return neighbour(here, 0, -1);
    case Qt::Key_Right:
    case Qt::Key_Tab:
        return neighbour(here, 0, 1);
    case Qt::Key_PageUp:
        return moveCursor(MovePageUp, Qt::NoModifier);
    case Qt::Key_PageDown:
        return moveCursor(MovePageDown, Qt::NoModifier);
    default:
        return {};
    }
}

void MeasureView::type(const QString& text) {
    if (!m_model->canHold(currentIndex())) return;
    if (!m_editor) edit(currentIndex(), AllEditTriggers, nullptr);
    if (m_editor) m_editor->setText(text);
}

} // namespace hammerline
