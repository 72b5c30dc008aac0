// How the rows of a list are painted.
#pragma once

#include "ui/widgets/row_table.h"

#include <QStyledItemDelegate>

namespace hammerline {

/// The width a cell takes at least to be read whole, without the space at its sides.
int neededWidth(const RowCell&);

class RowDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    explicit RowDelegate(RowTable* table) : QStyledItemDelegate(table), m_table(table) {}
    void paint(QPainter*, const QStyleOptionViewItem&, const QModelIndex&) const override;

private:
    void paintHeading(QPainter&, const QRect&, const ListRow&, const Look&) const;
    RowTable* m_table;
};

} // namespace hammerline
