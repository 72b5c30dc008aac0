// The page of the Adjust station: order of work, the lines of one work, what the plan leads to, and above them what is
// asked before the plan.
#pragma once

#include "ui/stations/adjust_rows.h"

class QGridLayout;
class QStackedWidget;

namespace hammerline {

class EmptyState;

class AdjustPage : public QWidget {
    Q_OBJECT
public:
    explicit AdjustPage(QWidget* parent);
    RowTable& order() { return *m_order; }
    RowTable& lines() { return *m_lines; }

    void showNothing(const QString& sentence);
    void showOrder(const AdjustmentSheet&, const LineStates&, const Piano&);
    /// Null: what waits for the survey (row 0 of the order), or that there is nothing to adjust.
    void showWork(const AdjustmentWork*, const AdjustmentSheet&, const Piano&, const LineStates&);
    /// HTML; what the readings will be.
    void showLeads(const QString&);
    /// Before the questions: a bench that does not hold the keys as the piano did.
    void showSetUp(const BenchSetUp&, const Piano&);
    void showAsked(const std::vector<std::string_view>&, const Piano& questions);
    /// Over the page: readings that are newer than the plan; 0: nothing to say.
    void showNewer(int readings, int planPass);
    /// The work before or after in the order; false: there is none.
    bool stepOrder(int by);

Q_SIGNALS:
    void reckonAsked();

protected:
    void resizeEvent(QResizeEvent*) override;

private:
    void layOut(bool narrow);
    void sayLeads();
    void buildNewer();

    RowTable *m_order, *m_lines;
    Panel *m_orderPanel, *m_workPanel, *m_leadsPanel;
    bool m_waits = false, m_narrow = false;
    QString m_setUp, m_said, m_cautionText;
    QLabel *m_workText, *m_leads, *m_asked, *m_caution;
    QWidget* m_newer;
    QLabel* m_newerText;
    QGridLayout* m_grid;
    QStackedWidget* m_stack;
    EmptyState* m_empty;
};

} // namespace hammerline
