// The keyboard drawn along the window: which notes are out, which way and how far, and which note is current. One
// instance below all stations, never rebuilt.
#pragma once

#include "ui/stations/station.h"
#include "ui/widgets/note_axis.h"
#include "ui/widgets/spoken.h"

#include <QPixmap>

namespace hammerline {

class KeyboardStrip : public QWidget, public Speaking {
    Q_OBJECT
public:
    explicit KeyboardStrip(Workbench&, QWidget* parent = nullptr);

    void setMarks(StripMarks);
    /// Not owned; null: none.
    void setTool(StripTool*);
    const NoteAxis& axis() const { return m_axis; }
    QRect keysRect() const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    /// The sentence of the current note, for a screen reader.
    QString sentence() const;
    /// How many notes are out and which, then the sentence of the current note.
    QString spoken() const override;

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void changeEvent(QEvent*) override;
    void mousePressEvent(QMouseEvent*) override;
    void mouseMoveEvent(QMouseEvent*) override;
    void mouseReleaseEvent(QMouseEvent*) override;
    void keyPressEvent(QKeyEvent*) override;

private:
    struct Bar {
        int marks = 0; // signed
        bool uneven = false;
        bool mendFirst = false;
    };
    void layOut();
    void reckonBars();
    QPixmap drawnKeys() const;
    void paintLegend(QPainter&) const;
    void paintLabels(QPainter&) const;
    void paintBars(QPainter&) const;
    void paintKeyMarks(QPainter&) const;
    void paintCurrent(QPainter&) const;
    QRectF barRect(NoteNumber, int marks) const;
    QString standingText() const;

    Workbench& m_bench;
    StripMarks m_marks;
    StripTool* m_tool = nullptr;
    NoteAxis m_axis;
    std::vector<Bar> m_bars;
    mutable QPixmap m_keys;
};

} // namespace hammerline
