// The headers of the grid: dimensions with their zone at the current note, notes with key swatch and mend mark.
#pragma once

#include "ui/stations/measure_model.h"

#include <QHeaderView>

namespace hammerline {

class DimensionHeader : public QHeaderView {
    Q_OBJECT
public:
    DimensionHeader(Workbench&, const MeasureModel&, QWidget* parent);
    QSize sizeHint() const override;
    /// As wide as its longest word, zone or reading needs.
    int wantedWidth(int column) const;
    /// Painted again where the current note or dimension changes what it says.
    void follow();

protected:
    void paintSection(QPainter*, const QRect&, int column) const override;

private:
    QStringList nameLines(int column) const;
    QString zoneLine(int column) const;

    Workbench& m_bench;
    const MeasureModel& m_readings;
    QStringList m_zones;
    DimensionId m_current{};
};

class NoteHeader : public QHeaderView {
    Q_OBJECT
public:
    NoteHeader(Workbench&, const MeasureModel&, QWidget* parent);
    QSize sizeHint() const override;

protected:
    void paintSection(QPainter*, const QRect&, int row) const override;

private:
    void paintBand(QPainter&, const QRect&, int row) const;

    Workbench& m_bench;
    const MeasureModel& m_readings;
};

/// Above the notes and left of the dimensions: what the columns' third line speaks of.
class HeaderCorner : public QWidget {
    Q_OBJECT
public:
    HeaderCorner(Workbench&, QWidget* parent);

protected:
    void paintEvent(QPaintEvent*) override;

private:
    Workbench& m_bench;
};

} // namespace hammerline
