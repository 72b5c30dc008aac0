// One dimension across the keyboard: its zone, the run of the readings, what is out, the pass before. It shares the
// note axis of the keyboard strip below it.
#pragma once

#include "ui/widgets/look.h"
#include "ui/widgets/note_axis.h"
#include "ui/widgets/spoken.h"
#include "ui/workbench.h"

#include <QWidget>

class QPainter;

namespace hammerline {

/// The vertical scale of a profile: limits in trade units and the round steps between them.
struct ProfileScale {
    double low = 0, high = 1, step = 1;
    /// Takes in the zones and the readings and 7 per cent more; readings beyond six zone widths are cut at the edge.
    static ProfileScale over(double zoneLow, double zoneHigh, double readLow, double readHigh);
    double first() const; // lowest step line
};

class Profile : public QWidget, public Speaking {
    Q_OBJECT
public:
    explicit Profile(Workbench&, QWidget* parent = nullptr);
    /// The pass shown (0: the current one) and the earlier one drawn as short dashes (0: none).
    void setPasses(int shown, int before);
    /// What lies where: "too far", for the bar above the profile.
    QString legend() const;
    /// The dimension, how many notes lie outside and which, then the current note.
    QString spoken() const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void mousePressEvent(QMouseEvent*) override;
    void mouseMoveEvent(QMouseEvent*) override;
    void keyPressEvent(QKeyEvent*) override;
    void focusInEvent(QFocusEvent*) override;
    void focusOutEvent(QFocusEvent*) override;

private:
    struct Point {
        NoteNumber note;
        const Judged* judged = nullptr;
        double value = 0;
        bool sharp = false;
    };
    void reckon();
    double y(double value) const;
    const Zone* zoneHere(const PassView&, NoteNumber) const;
    void paintZones(QPainter&) const;
    void paintScale(QPainter&) const;
    void paintBefore(QPainter&) const;
    void paintMedian(QPainter&) const;
    void paintPoints(QPainter&) const;
    void paintOut(QPainter&, const Point&, double at) const;
    void paintWords(QPainter&) const;
    void paintLabels(QPainter&) const;
    void paintCurrent(QPainter&) const;
    const PassView* view() const;

    Workbench& m_bench;
    int m_shown = 0, m_before = 0;
    NoteAxis m_axis;
    ProfileScale m_scale;
    std::vector<Point> m_points;
    std::vector<Point> m_words;
};

} // namespace hammerline
