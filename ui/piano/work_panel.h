// What the work takes on this piano: minutes of every operation and of getting at it, and which way round its screws
// turn. What was said of this piano stands bold; the rest is customary.
#pragma once

#include "ui/stations/station_words.h"

namespace hammerline {

class WorkPanel : public Panel {
    Q_OBJECT
public:
    WorkPanel(Workbench&, QWidget* parent);
    RowTable& table() { return *m_table; }
    void refresh();

Q_SIGNALS:
    /// An attribute of the set-up is to have a value; empty: as is customary.
    void said(const QString& attribute, const QString& value);

private:
    bool keyPressed(QKeyEvent*);
    void askMinutes(int key);
    void turnRound(int key);
    void takeBack(int key);

    Workbench& m_bench;
    RowTable* m_table;
};

} // namespace hammerline
