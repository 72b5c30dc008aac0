// How the table of the survey is painted: ink only, no colour (look.md 8).
#pragma once

#include "ui/stations/survey_model.h"
#include "ui/widgets/look.h"

#include <QHeaderView>
#include <QStyledItemDelegate>

namespace hammerline {

class SurveyView;

/// Blank: not looked at, point: sound, hollow: watch, solid: to do, slotted: blocks, tick: mended, hatch: not fitted.
void paintPlace(QPainter&, const QRectF& cell, SurveyModel::Place, const Look&, const QColor& ground);

class PlaceDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    explicit PlaceDelegate(SurveyView&);
    void paint(QPainter*, const QStyleOptionViewItem&, const QModelIndex&) const override;

private:
    SurveyView& m_view;
};

/// Note numbers over the columns: the first, every fifth, the current one.
class NoteNumberHeader : public QHeaderView {
    Q_OBJECT
public:
    explicit NoteNumberHeader(SurveyView&);

protected:
    void paintEvent(QPaintEvent*) override;

private:
    SurveyView& m_view;
};

/// Names of the parts, bold where the cursor is.
class PartHeader : public QHeaderView {
    Q_OBJECT
public:
    explicit PartHeader(SurveyView&);

protected:
    void paintSection(QPainter*, const QRect&, int row) const override;

private:
    QString nameIn(int width, int row, const QFontMetrics&) const;

    SurveyView& m_view;
};

/// The signs and their words in a row.
class SurveyLegend : public QWidget {
    Q_OBJECT
public:
    explicit SurveyLegend(QWidget* parent = nullptr);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;
};

} // namespace hammerline
