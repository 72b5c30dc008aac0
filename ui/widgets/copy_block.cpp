#include "ui/widgets/copy_block.h"

#include <QAbstractItemModel>
#include <QHeaderView>
#include <QItemSelectionModel>
#include <QTableView>

#include <algorithm>

namespace hammerline {

namespace {

struct Block {
    int top = 0, bottom = -1, left = 0, right = -1;
    bool whole = false; // the whole list: nothing was selected
};

Block blockIn(const QTableView& view) {
    const QAbstractItemModel& model = *view.model();
    const QModelIndexList chosen = view.selectionModel()->selectedIndexes();
    if (view.selectionMode() == QAbstractItemView::NoSelection)
        return {0, model.rowCount() - 1, 0, model.columnCount() - 1, true};
    if (chosen.isEmpty()) {
        const QModelIndex here = view.currentIndex();
        return here.isValid() ? Block{here.row(), here.row(), here.column(), here.column()} : Block{};
    }
    const auto [top, bottom] = std::ranges::minmax(chosen, {}, &QModelIndex::row);
    const auto [left, right] = std::ranges::minmax(chosen, {}, &QModelIndex::column);
    return {top.row(), bottom.row(), left.column(), right.column()};
}

/// What a heading says, also where it is painted by hand and only read out.
QString headingAt(const QAbstractItemModel& model, int section, Qt::Orientation orientation) {
    const QString shown = model.headerData(section, orientation, Qt::DisplayRole).toString();
    return shown.isEmpty() ? model.headerData(section, orientation, Qt::AccessibleTextRole).toString() : shown;
}

QString flat(QString text) {
    return text.replace(u'\n', u' ').replace(u'\t', u' ');
}

QString tag(const char* name, const QString& text) {
    return QStringLiteral("<%1>%2</%1>").arg(QLatin1String(name), text.toHtmlEscaped());
}

} // namespace

std::unique_ptr<QMimeData> blockOf(const QTableView& view) {
    if (!view.model()) return nullptr;
    const QAbstractItemModel& model = *view.model();
    const Block block = blockIn(view);
    if (block.bottom < block.top || block.right < block.left) return nullptr;
    const bool named = view.verticalHeader()->isVisible(); // a row has a heading of its own: its note
    QStringList lines, headings;
    QString html = QStringLiteral("<meta charset=\"utf-8\"><table><tr>") + (named ? tag("th", {}) : QString());
    for (int column = block.left; column <= block.right; ++column) {
        headings << flat(headingAt(model, column, Qt::Horizontal));
        html += tag("th", headings.last());
    }
    if (block.whole) lines << headings.join(u'\t');
    for (int row = block.top; row <= block.bottom; ++row) {
        html += QStringLiteral("</tr><tr>");
        if (named) html += tag("th", headingAt(model, row, Qt::Vertical));
        QStringList cells;
        for (int column = block.left; column <= block.right; ++column) {
            cells << flat(model.index(row, column).data().toString());
            html += tag("td", cells.last());
        }
        lines << cells.join(u'\t');
    }
    auto data = std::make_unique<QMimeData>();
    data->setText(lines.join(u'\n'));
    data->setHtml(html + QStringLiteral("</tr></table>"));
    return data;
}

} // namespace hammerline
