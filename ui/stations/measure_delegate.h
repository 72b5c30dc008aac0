// Paints a reading: base, hatch, ramp fill, frame, marks, number, corner, line (look.md 5), and makes its editor.
#pragma once

#include "ui/stations/measure_model.h"
#include "ui/widgets/look.h"

#include <QStyledItemDelegate>

namespace hammerline {

class ReadingDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    explicit ReadingDelegate(Workbench&, QObject* parent = nullptr);

    void paint(QPainter*, const QStyleOptionViewItem&, const QModelIndex&) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem&, const QModelIndex&) const override;
    void setEditorData(QWidget*, const QModelIndex&) const override;
    void setModelData(QWidget*, QAbstractItemModel*, const QModelIndex&) const override {} // the view stores
    void updateEditorGeometry(QWidget*, const QStyleOptionViewItem&, const QModelIndex&) const override;
    /// The cell without the section band above it.
    static QRect cellRect(const QRect& whole, const QModelIndex&);
    /// Text and ground of a cell, for the test of contrast.
    static std::pair<QRgb, QRgb> inkAndGround(const CellLook&, bool sharpRow, bool currentRow, const Look&);

protected:
    bool eventFilter(QObject*, QEvent*) override;
};

/// Extra height of a row that begins a section: the band with its name.
int sectionBandHeight();

} // namespace hammerline
