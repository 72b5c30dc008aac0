#include "ui/stations/measure_view.h"

#include "ui/stations/measure_delegate.h"
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_headers.h"

#include <QKeyEvent>
#include <QScrollBar>

namespace hammerline {

namespace {
constexpr double kRow = 6, kRoomyRow = 8, kNarrow = 15, kWide = 24;
}

MeasureView::MeasureView(Workbench& bench, QWidget* parent)
    : QTableView(parent), m_bench(bench), m_model(new MeasureModel(bench, this)) {
    setObjectName(QStringLiteral("grid"));
    setAccessibleName(tr("Readings"));
    setHorizontalHeader(new DimensionHeader(bench, *m_model, this));
    setVerticalHeader(new NoteHeader(bench, *m_model, this));
    setModel(m_model);
    setItemDelegate(new ReadingDelegate(bench, this));
    setEditTriggers(AnyKeyPressed | EditKeyPressed | DoubleClicked);
    setSelectionMode(ContiguousSelection);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setCornerButtonEnabled(false);
    setVerticalScrollMode(ScrollPerItem);
    setHorizontalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    m_corner = new HeaderCorner(bench, this);
    connect(m_model, &QAbstractItemModel::modelReset, this, &MeasureView::refit);
    connect(m_model, &QAbstractItemModel::columnsInserted, this, &MeasureView::refit);
    connect(m_model, &QAbstractItemModel::columnsRemoved, this, &MeasureView::refit);
    connect(&m_bench, &Workbench::pianoChanged, this, &MeasureView::refit); // zones and breaks, the notes alike
    connect(&m_bench, &Workbench::noteChanged, this, &MeasureView::follow);
    connect(&m_bench, &Workbench::dimensionChanged, this, &MeasureView::follow);
    connect(&m_bench, &Workbench::recordChanged, this, &MeasureView::rebuildWalk);
    connect(&m_bench, &Workbench::passChanged, this, &MeasureView::rebuildWalk);
    refit();
}

ReadingEditor* MeasureView::editor() const {
    return m_editor;
}

void MeasureView::setOrder(const EntryOrder& order) {
    m_order = order;
    rebuildWalk();
}

void MeasureView::rebuildWalk() {
    std::vector<DimensionId> columns;
    for (int c = 0; c < m_model->columnCount(); ++c)
        columns.push_back(m_model->dimensionAt(c));
    m_walk = EntryWalk(m_bench, m_order, columns);
}

// --- the current cell is the workbench's

void MeasureView::follow() {
    const QModelIndex wanted = m_model->indexOf(m_bench.cell());
    if (!m_following && wanted.isValid() && wanted != currentIndex()) {
        if (m_editor && !commitEditor()) return;
        m_following = true;
        setCurrentIndex(wanted);
        m_following = false;
    }
    showCurrent();
}

/// The row that was the current one and the one that is now are painted again, and nothing else: at a fast typist's
/// hand the rest of the grid must not cost a key.
void MeasureView::showCurrent() {
    const int row = m_bench.note().value - 1;
    for (const int each : {m_shownRow, row})
        if (each >= 0 && each < m_model->rowCount()) {
            const int top = rowViewportPosition(each), height = rowHeight(each);
            viewport()->update(0, top, viewport()->width(), height);
            verticalHeader()->viewport()->update(0, top, verticalHeader()->width(), height);
        }
    m_shownRow = row;
    horizontalHeader()->viewport()->update();
}

void MeasureView::currentChanged(const QModelIndex& now, const QModelIndex& before) {
    QTableView::currentChanged(now, before);
    if (now.isValid() && !m_following) {
        m_following = true;
        m_bench.setCell(m_model->cellAt(now));
        m_following = false;
    }
    showCurrent();
}

// --- moving

QModelIndex MeasureView::neighbour(QModelIndex from, int rows, int columns) const {
    QModelIndex next = from;
    for (;;) {
        next = m_model->index(next.row() + rows, next.column() + columns);
        if (!next.isValid()) return from;
        if (m_model->canHold(next)) return next;
    }
}

QModelIndex MeasureView::moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) {
    const QModelIndex here = currentIndex();
    if (!here.isValid()) return m_model->index(0, 0);
    switch (action) {
    case MoveUp:
        return neighbour(here, -1, 0);
    case MoveDown:
        return neighbour(here, 1, 0);
    case MoveLeft:
        return neighbour(here, 0, -1);
    case MoveRight:
        return neighbour(here, 0, 1);
    default:
        return QTableView::moveCursor(action, modifiers);
    }
}

void MeasureView::moveTo(const QModelIndex& index) {
    if (index.isValid()) setCurrentIndex(index);
}

void MeasureView::advance(int by) {
    const QModelIndex here = currentIndex();
    if (!here.isValid()) return;
    if (const auto next = m_walk.step(m_model->cellAt(here), by)) moveTo(m_model->indexOf(*next));
}

void MeasureView::mousePressEvent(QMouseEvent* event) {
    if (m_editor && !commitEditor()) return event->accept();
    QTableView::mousePressEvent(event);
}

// --- the field

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
    connect(field, &ReadingEditor::taken, this, [this](Qt::Key key) {
        Reading reading = *m_editor->meaning().reading;
        reading.taken = true;
        if (store(m_editor->cell(), reading, m_editor->repeat())) {
            closeField();
            if (key == Qt::Key_Enter) advance(1);
        }
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

bool MeasureView::commitEditor() {
    if (!m_editor) return true;
    ReadingEditor* field = m_editor;
    using Meaning = Understanding::Kind;
    if (!field->changed() || field->meaning().kind == Meaning::empty) {
        closeField(); // an emptied field is no reading, and takes none back: Del does
        return true;
    }
    if (field->meaning().kind != Meaning::sound) {
        field->ask();
        return false;
    }
    if (!store(field->cell(), *field->meaning().reading, field->repeat())) return false;
    closeField();
    return true;
}

void MeasureView::afterFinish(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    if (!commitEditor()) return;
    const QModelIndex here = currentIndex();
    switch (key) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return advance(modifiers & Qt::ShiftModifier ? -1 : 1);
    case Qt::Key_Up:
        return moveTo(neighbour(here, -1, 0));
    case Qt::Key_Down:
        return moveTo(neighbour(here, 1, 0));
    case Qt::Key_Left:
    case Qt::Key_Backtab:
        return moveTo(neighbour(here, 0, -1));
    case Qt::Key_Right:
    case Qt::Key_Tab:
        return moveTo(neighbour(here, 0, 1));
    case Qt::Key_PageUp:
        return moveTo(moveCursor(MovePageUp, Qt::NoModifier));
    case Qt::Key_PageDown:
        return moveTo(moveCursor(MovePageDown, Qt::NoModifier));
    default:
        return;
    }
}

void MeasureView::type(const QString& text) {
    if (!m_model->canHold(currentIndex())) return;
    if (!m_editor) edit(currentIndex(), AllEditTriggers, nullptr);
    if (m_editor) m_editor->setText(text);
}

// --- measures

void MeasureView::setRoomy(bool on) {
    m_roomy = on;
    refit();
}

void MeasureView::refit() {
    const int row = u(m_roomy ? kRoomyRow : kRow);
    verticalHeader()->setDefaultSectionSize(row);
    for (int r = 0; r < m_model->rowCount(); ++r)
        verticalHeader()->resizeSection(r, row + (m_model->startsSection(r) ? sectionBandHeight() : 0));
    fitColumns();
    rebuildWalk();
    if (const QModelIndex wanted = m_model->indexOf(m_bench.cell()); wanted.isValid()) {
        m_following = true;
        setCurrentIndex(wanted);
        m_following = false;
    }
}

void MeasureView::fitColumns() {
    const int columns = m_model->columnCount();
    if (columns == 0) return;
    std::vector<int> widths;
    int sum = 0;
    for (int c = 0; c < columns; ++c) {
        widths.push_back(
            std::clamp(static_cast<DimensionHeader*>(horizontalHeader())->wantedWidth(c), u(kNarrow), u(kWide)));
        sum += widths.back();
    }
    const int room = viewport()->width();
    // narrow ones give nothing up: where the window is too small the grid scrolls
    const int spare = std::max(0, room - sum);
    for (int c = 0; c < columns; ++c)
        horizontalHeader()->resizeSection(c, widths[static_cast<std::size_t>(c)] + spare * (c + 1) / columns -
                                                 spare * c / columns);
}

// An item view paints all its cells when the focus comes or goes, and here it does both at every reading: from the grid
// to the field and back. Only the current row shows it.
void MeasureView::focusInEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusInEvent(event);
    setAttribute(Qt::WA_InputMethodEnabled, false); // the field has its own
    showCurrent();
}

void MeasureView::focusOutEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusOutEvent(event);
    showCurrent();
}

void MeasureView::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fitColumns();
    if (m_editor) m_editor->placeAt(ReadingDelegate::cellRect(visualRect(currentIndex()), currentIndex()));
}

void MeasureView::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) {
        if (m_corner) refit();
    }
}

void MeasureView::updateGeometries() {
    QTableView::updateGeometries();
    if (m_corner) m_corner->setGeometry(0, 0, verticalHeader()->width(), horizontalHeader()->height());
}

} // namespace hammerline
