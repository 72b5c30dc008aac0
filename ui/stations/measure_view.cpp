#include "ui/stations/measure_view.h"

#include "ui/stations/measure_acts.h"
#include "ui/stations/measure_delegate.h"
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_headers.h"
#include "ui/widgets/plate.h"

#include <QKeyEvent>
#include <QScrollBar>

namespace hammerline {

namespace {
constexpr double kRow = 6, kRoomyRow = 8, kNarrow = 15, kWide = 24;
constexpr int kRowsAhead = 2;
} // namespace

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
    chosen();
    m_stays = m_walk.size() == 0;
}

void MeasureView::rebuildWalk() {
    std::vector<DimensionId> columns;
    for (int c = 0; c < m_model->columnCount(); ++c)
        columns.push_back(m_model->dimensionAt(c));
    m_walk = EntryWalk(m_bench, m_order, columns);
}

// --- the current cell is the workbench's

void MeasureView::follow() {
    // the column of the other key colour: the hand goes to the one that this key has
    const Cell wanted = cellToType(m_bench, m_bench.cell());
    const QModelIndex index = m_model->indexOf(wanted);
    if (!m_following && index.isValid() && (index != currentIndex() || wanted != m_bench.cell())) {
        const bool held = m_editor && !commitEditor(); // a refused text: strip and card stay with it
        m_following = true;
        m_bench.setCell(held ? m_editor->cell() : wanted);
        if (!held) setCurrentIndex(index);
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
    static_cast<DimensionHeader*>(horizontalHeader())->follow();
}

void MeasureView::currentChanged(const QModelIndex& now, const QModelIndex& before) {
    // the base tells a screen reader of the cell as if the hand were here, also behind the entry at the bench
    hasFocus() ? QTableView::currentChanged(now, before) : QAbstractItemView::currentChanged(now, before);
    chosen();
    if (now.isValid() && !m_following) {
        m_following = true;
        m_bench.setCell(m_model->cellAt(now));
        m_following = false;
        if (cellToType(m_bench, m_bench.cell()) != m_bench.cell()) return follow();
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
    goOn(step(by));
}

QModelIndex MeasureView::step(int by) const {
    const QModelIndex here = currentIndex();
    const auto next = here.isValid() ? m_walk.step(m_model->cellAt(here), by) : std::nullopt;
    return next ? m_model->indexOf(*next) : QModelIndex();
}

/// What comes next is seen before the hand gets there.
void MeasureView::scrollTo(const QModelIndex& index, ScrollHint hint) {
    if (hint == EnsureVisible)
        for (const int by : {-kRowsAhead, kRowsAhead})
            if (const auto beside = index.siblingAtRow(std::clamp(index.row() + by, 0, m_model->rowCount() - 1));
                beside.isValid())
                QTableView::scrollTo(beside, hint);
    QTableView::scrollTo(index, hint);
}

void MeasureView::mousePressEvent(QMouseEvent* event) {
    if (m_editor && !commitEditor()) return event->accept();
    chosen();
    QTableView::mousePressEvent(event);
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
// to the field and back. Only the current cell shows it.
void MeasureView::focusInEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusInEvent(event);
    setAttribute(Qt::WA_InputMethodEnabled, false); // the field has its own
    update(currentIndex());
}

void MeasureView::focusOutEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusOutEvent(event);
    update(currentIndex());
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

void MeasureView::scrollContentsBy(int dx, int dy) {
    QTableView::scrollContentsBy(dx, dy);
    if (m_word) m_word->hide(); // it stands beside a cell that has just moved
}

void MeasureView::updateGeometries() {
    QTableView::updateGeometries();
    if (m_corner) m_corner->setGeometry(0, 0, verticalHeader()->width(), horizontalHeader()->height());
}

} // namespace hammerline
