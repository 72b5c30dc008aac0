// What if: handles on the distances of the current note. Account, stroke and drawing follow at once; nothing is stored
// until a person takes what was tried over as this note's own aim, with a reason.
#pragma once

#include "ui/stations/action_desk.h"

#include <QWidget>

namespace hammerline {

class WhatIf : public QWidget {
    Q_OBJECT
public:
    explicit WhatIf(ActionDesk&, QWidget* parent = nullptr);

    QSize sizeHint() const override;
    /// True where the key was used: up, down choose a handle; Shift with left or right moves it, Ctrl too by five
    /// steps; Del puts it back, Enter takes over; C lets the capstans follow the rail.
    bool useKey(int key, Qt::KeyboardModifiers);
    DimensionId current() const;
    QRect currentRow() const;
    QString sentence() const;

Q_SIGNALS:
    void refused(const QString& sentence);

protected:
    void paintEvent(QPaintEvent*) override;
    void mousePressEvent(QMouseEvent*) override;
    void mouseMoveEvent(QMouseEvent*) override;

private:
    struct Handle {
        DimensionId id{};
        double low = 0, high = 1, step = 0.1; // of the track, mm
        bool rail = false;                    // the rest rail, all notes
    };
    Handle handleOf(DimensionId, std::optional<double> read, std::optional<double> aim) const;
    std::vector<Handle> handles() const;
    QRectF rowBox(std::size_t) const;
    QRectF trackBox(std::size_t) const;
    void moveTo(std::size_t, double mm);
    void moveBy(int steps);
    void choose(int by);
    void takeOver();
    void paintHandle(QPainter&, std::size_t, const Handle&);
    void paintOutcome(QPainter&, double top);
    std::optional<double> valueOf(const Handle&) const;
    std::optional<double> readOf(const Handle&) const;
    bool onRail() const;
    void paintRail(QPainter&, double top);

    ActionDesk& m_desk;
    std::size_t m_current = 0;
};

} // namespace hammerline
