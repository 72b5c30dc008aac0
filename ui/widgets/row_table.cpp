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

/// Column titles in plain type over a hair line.
class Head : public QHeaderView {
public:
    explicit Head(QWidget* parent) : QHeaderView(Qt::Horizontal, parent) {
        setSectionsClickable(false);
        setHighlightSections(false);
        setFocusPolicy(Qt::NoFocus);
    }
    QSize sizeHint() const override { return {0, u(7.5)}; }

protected:
    void paintSection(QPainter* painter, const QRect& r, int section) const override {
        const Look& look = lookOf(*this);
        painter->fillRect(r, QColor::fromRgb(look.paper));
        painter->fillRect(QRect(r.left(), r.bottom(), r.width(), 1), QColor::fromRgb(look.edge));
        painter->setFont(face(Text::label));
        painter->setPen(QColor::fromRgb(look.ink2));
        const auto align = model()->headerData(section, Qt::Horizontal, Qt::TextAlignmentRole).toInt();
        const QRect room = r.adjusted(u(2), 0, -u(2), 0);
        const QString title = model()->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString();
        painter->drawText(room, align | Qt::AlignVCenter,
                          painter->fontMetrics().elidedText(title, Qt::ElideRight, room.width()));
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

QVariant RowModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const ListRow& here = row(index.row());
    const auto column = static_cast<std::size_t>(index.column());
    if (role == Qt::DisplayRole)
        return column < here.cells.size() ? here.cells[column].text : index.column() == 0 ? here.heading : QString();
    if (role == Qt::AccessibleTextRole) {
        if (!here.sentence.isEmpty()) return here.sentence;
        if (!here.heading.isEmpty()) return here.heading;
        QStringList parts;
        for (const RowCell& cell : here.cells)
            if (!cell.text.isEmpty()) parts << cell.text;
        return parts.join(QStringLiteral(", "));
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

bool RowTable::selectKey(int key) {
    for (int i = 0; i < m_model.rowCount(); ++i)
        if (m_model.row(i).key == key && m_model.row(i).heading.isEmpty()) {
            setCurrentIndex(m_model.index(i, 0));
            return true;
        }
    return false;
}

void RowTable::selectFirst() {
    for (int i = 0; i < m_model.rowCount(); ++i)
        if (m_model.row(i).heading.isEmpty()) return setCurrentIndex(m_model.index(i, 0));
}

void RowTable::layOut() {
    constexpr double kLeastStretch = 18, kLeastShare = 0.6;
    const auto& columns = m_model.columns();
    const int room = viewport()->width();
    double fixed = 0, least = 0;
    for (const RowColumn& column : columns)
        (column.width > 0 ? fixed : least) += column.width > 0 ? units(column.width) : units(kLeastStretch);
    // in a narrow window (large type) all give way alike, so that none is lost
    const double share = fixed + least > room ? std::clamp((room - least) / fixed, kLeastShare, 1.0) : 1.0;
    int rest = room, stretch = -1;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const int column = static_cast<int>(i);
        if (columns[i].width <= 0) {
            stretch = column;
            continue;
        }
        const int width = qRound(units(columns[i].width) * share);
        setColumnWidth(column, width);
        rest -= width;
    }
    if (stretch >= 0) setColumnWidth(stretch, std::max(u(8), rest));
    clearSpans();
    for (int i = 0; i < m_model.rowCount(); ++i) {
        const ListRow& row = m_model.row(i);
        setRowHeight(i, u(row.height > 0 ? row.height : m_rowHeight));
        if (!row.heading.isEmpty() && columns.size() > 1) setSpan(i, 0, 1, static_cast<int>(columns.size()));
    }
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
    QTableView::currentChanged(now, before);
    viewport()->update();
    if (!m_filling && now.isValid()) Q_EMIT moved(m_model.row(now.row()).key);
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
