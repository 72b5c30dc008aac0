#include "ui/widgets/row_table.h"

#include "ui/widgets/row_paint.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace hammerline {

namespace {

constexpr double kTitleRow = 7.5, kTwoTitleRows = 10;

/// Column titles in plain type over a hair line; one that is wider than its column takes a second line.
class Head : public QHeaderView {
public:
    explicit Head(QWidget* parent) : QHeaderView(Qt::Horizontal, parent) {
        setSectionsClickable(false);
        setHighlightSections(false);
        setFocusPolicy(Qt::NoFocus);
    }
    QSize sizeHint() const override {
        const QFontMetrics metrics(face(Text::label));
        for (int section = 0; section < count(); ++section)
            if (metrics.horizontalAdvance(title(section)) > sectionSize(section) - u(4)) return {0, u(kTwoTitleRows)};
        return {0, u(kTitleRow)};
    }

protected:
    void paintSection(QPainter* painter, const QRect& r, int section) const override {
        const Look& look = lookOf(*this);
        painter->fillRect(r, QColor::fromRgb(look.paper));
        painter->fillRect(QRect(r.left(), r.bottom(), r.width(), 1), QColor::fromRgb(look.edge));
        painter->setFont(face(Text::label));
        painter->setPen(QColor::fromRgb(look.ink2));
        const auto align = model()->headerData(section, Qt::Horizontal, Qt::TextAlignmentRole).toInt();
        painter->drawText(r.adjusted(u(2), 0, -u(2), 0), align | Qt::AlignVCenter | Qt::TextWordWrap, title(section));
    }

private:
    QString title(int section) const {
        return model() ? model()->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString() : QString();
    }
};

} // namespace

void RowModel::setColumns(std::vector<RowColumn> columns) {
    beginResetModel();
    m_columns = std::move(columns);
    endResetModel();
}

void RowModel::setRows(std::vector<ListRow> rows) {
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

int RowModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}
int RowModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_columns.size());
}

/// "low 3": the cell with the title of its column; empty where it says nothing.
QString RowModel::cellText(const ListRow& row, std::size_t column) const {
    if (column >= row.cells.size()) return {};
    const RowCell& cell = row.cells[column];
    const QString title = column < m_columns.size() ? m_columns[column].title : QString();
    QString text = cell.text == QStringLiteral("·") ? tr("none") : cell.text;
    if (cell.kind == RowCell::Kind::tick) text = cell.part == 2 ? tr("done") : tr("open");
    if (cell.kind == RowCell::Kind::bars) text = tr("%1 before, %2 now").arg(cell.value).arg(cell.now);
    return title.isEmpty() || text.isEmpty() ? text : QStringLiteral("%1 %2").arg(title, text);
}

/// The row's own sentence, else its cells with their titles.
QString RowModel::rowSentence(const ListRow& row) const {
    if (!row.sentence.isEmpty()) return row.sentence;
    QStringList parts;
    for (std::size_t i = 0; i < row.cells.size(); ++i)
        if (const QString text = i == 0 ? row.cells[0].text : cellText(row, i); !text.isEmpty()) parts << text;
    return parts.join(QStringLiteral(", "));
}

QVariant RowModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const ListRow& here = row(index.row());
    const auto column = static_cast<std::size_t>(index.column());
    if (role == Qt::DisplayRole)
        return column < here.cells.size() ? here.cells[column].text : index.column() == 0 ? here.heading : QString();
    if (role == Qt::AccessibleTextRole) {
        if (!here.heading.isEmpty()) return here.heading;
        return index.column() == 0 ? rowSentence(here) : cellText(here, column);
    }
    return {};
}

QVariant RowModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section >= columnCount()) return {};
    const RowColumn& column = m_columns[static_cast<std::size_t>(section)];
    if (role == Qt::DisplayRole) return column.title;
    if (role == Qt::TextAlignmentRole) return static_cast<int>(column.align);
    return {};
}

Qt::ItemFlags RowModel::flags(const QModelIndex& index) const {
    if (!index.isValid() || !row(index.row()).heading.isEmpty()) return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

RowTable::RowTable(const QString& accessibleName, std::vector<RowColumn> columns, double rowHeight, QWidget* parent)
    : QTableView(parent), m_rowHeight(rowHeight) {
    setAccessibleName(accessibleName);
    setFrameShape(QFrame::NoFrame);
    setShowGrid(false);
    setSelectionMode(QAbstractItemView::NoSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    const bool titled = std::ranges::any_of(columns, [](const RowColumn& c) { return !c.title.isEmpty(); });
    setHorizontalHeader(new Head(this));
    horizontalHeader()->setVisible(titled);
    horizontalHeader()->setMinimumSectionSize(1); // the widths are ours, also those narrower than a style's least
    verticalHeader()->hide();
    verticalHeader()->setMinimumSectionSize(u(3));
    m_model.setColumns(std::move(columns));
    setModel(&m_model);
    setItemDelegate(new RowDelegate(this));
    connect(this, &QAbstractItemView::doubleClicked, this,
            [this](const QModelIndex& index) { Q_EMIT chosen(m_model.row(index.row()).key); });
}

void RowTable::setRows(std::vector<ListRow> rows) {
    const int key = currentKey();
    m_filling = true;
    m_model.setRows(std::move(rows));
    layOut();
    if (!selectKey(key)) selectFirst();
    m_filling = false;
}

int RowTable::currentKey() const {
    const QModelIndex index = currentIndex();
    return index.isValid() && index.row() < m_model.rowCount() ? m_model.row(index.row()).key : -1;
}

void RowTable::setCurrentKey(int key) {
    const bool before = std::exchange(m_filling, true);
    if (!selectKey(key)) setCurrentIndex({});
    m_filling = before;
}

void RowTable::stepRow(int by) {
    const bool before = std::exchange(m_filling, true);
    for (int i = currentIndex().row() + by; by != 0 && i >= 0 && i < m_model.rowCount(); i += by)
        if (m_model.row(i).heading.isEmpty()) {
            setCurrentIndex(m_model.index(i, 0));
            break;
        }
    m_filling = before;
}

bool RowTable::selectKey(int key) {
    for (int i = 0; i < m_model.rowCount(); ++i)
        if (m_model.row(i).key == key && m_model.row(i).heading.isEmpty()) {
            setCurrentIndex(m_model.index(i, 0));
            return true;
        }
    return false;
}

int RowTable::firstKey() const {
    const auto row = std::ranges::find_if(rows(), [](const ListRow& each) { return each.heading.isEmpty(); });
    return row == rows().end() ? -1 : row->key;
}

void RowTable::selectFirst() {
    for (int i = 0; i < m_model.rowCount(); ++i)
        if (m_model.row(i).heading.isEmpty()) return setCurrentIndex(m_model.index(i, 0));
}

void RowTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    layOut();
}

void RowTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) layOut();
}

void RowTable::currentChanged(const QModelIndex& now, const QModelIndex& before) {
    // a reader is told of a cell only where the hand is: the base would tell it of every list that follows along
    hasFocus() ? QTableView::currentChanged(now, before) : QAbstractItemView::currentChanged(now, before);
    viewport()->update();
    if (!m_filling && now.isValid()) Q_EMIT moved(m_model.row(now.row()).key);
}

/// A click that began and ended in the box ticks; elsewhere it only makes the row the current one.
void RowTable::mouseReleaseEvent(QMouseEvent* event) {
    QTableView::mouseReleaseEvent(event);
    const QModelIndex index = indexAt(event->position().toPoint());
    if (event->button() != Qt::LeftButton || !index.isValid()) return;
    const ListRow& row = m_model.row(index.row());
    const auto column = static_cast<std::size_t>(index.column());
    const bool cell = row.heading.isEmpty() && column < row.cells.size();
    const bool box = cell && row.cells[column].kind == RowCell::Kind::tick;
    if (box) Q_EMIT boxClicked(row.key);
}

void RowTable::keyPressEvent(QKeyEvent* event) {
    if (m_keys && m_keys(event)) return;
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        if (currentKey() >= 0) Q_EMIT chosen(currentKey());
        return;
    }
    // no letter is searched for: what a list does not use is the station's or the window's
    if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Right || !event->text().trimmed().isEmpty())
        return event->ignore();
    QTableView::keyPressEvent(event);
}

Panel::Panel(const QString& title, QWidget* body, QWidget* parent) : QWidget(parent), m_title(title) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, u(7.5), 0, 0);
    column->setSpacing(0);
    column->addWidget(body, 1);
}

void Panel::setTitle(const QString& title, const QString& remark) {
    m_title = title;
    m_remark = remark;
    setAccessibleName(title);
    update();
}

void Panel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), QColor::fromRgb(look.paper));
    const QRect head(0, 0, width(), u(7.5));
    painter.fillRect(head, QColor::fromRgb(look.head));
    painter.fillRect(QRect(width() - 1, 0, 1, height()), QColor::fromRgb(look.line));
    const QRect text = head.adjusted(u(3), 0, -u(3), 0);
    painter.setFont(face(Text::body, true));
    painter.setPen(QColor::fromRgb(look.ink));
    painter.drawText(text, Qt::AlignLeft | Qt::AlignVCenter, m_title);
    const int used = painter.fontMetrics().horizontalAdvance(m_title) + u(4);
    painter.setFont(face(Text::label));
    painter.setPen(QColor::fromRgb(look.ink2));
    const QRect rest = text.adjusted(used, 0, 0, 0);
    painter.drawText(rest, Qt::AlignRight | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(m_remark, Qt::ElideRight, rest.width()));
}

} // namespace hammerline
