// The whole job in the order in which it is done, with its hours: each step, and under it the parts it mends. Enter or
// F2 at a part asks for the minutes that are usual in this workshop.
#pragma once

#include "core/sheet/work_order.h"
#include "ui/workbench.h"

#include <QTreeWidget>

namespace hammerline {

class SurveyJob : public QTreeWidget {
    Q_OBJECT
public:
    explicit SurveyJob(Workbench&, QWidget* parent = nullptr);
    const WorkOrder& order() const { return m_order; }
    /// The part of a line; empty on a step.
    QString currentPart() const;
    void askMinutes();

Q_SIGNALS:
    void refused(const Refusal&);

protected:
    void keyPressEvent(QKeyEvent*) override;
    void showEvent(QShowEvent*) override;

private:
    void refresh();
    void addStep(int number, const WorkOrderStep&);

    Workbench& m_bench;
    WorkOrder m_order;
    bool m_old = true; // the record changed while nobody looked
};

} // namespace hammerline
