// What a hand does at the lines of one step of the work: ticks, amounts typed in the row, a screw that does not turn.
// Holds the plan as it is shown and its lines by the step they belong to.
#pragma once

#include "ui/stations/line_rows.h"
#include "ui/stations/line_ticks.h"

namespace hammerline {

class PlanTools;
class WorkPage;

class WorkLines : public QObject {
    Q_OBJECT
public:
    WorkLines(Workbench&, WorkPage&, const PlanTools&, QObject* parent);

    /// The plan as chosen, of the pass shown; what was refused is said.
    void reckon();
    /// A plan that was acted on stays; one that was only thought is thought again. The page says what it leads to.
    void refresh();
    bool has(std::string_view step) const { return m_works.contains(step); }
    /// The step that the first open line belongs to; empty: the plan has none.
    std::string_view firstOpenStep() const;
    /// Every line of a plan of the pass before is ticked: what was read since asks for a new one.
    bool isSpent() const;
    /// Shows the lines of a step that has some: its first work with an open line. The row of the current note becomes
    /// the current one, else the first open one.
    void show(std::string_view step);
    /// The work of the same step before or after; false: there is none.
    bool stepWork(int by);
    /// False: not a key of the lines.
    bool key(QKeyEvent*);
    /// The line of the current note becomes the current row; false: these lines have none.
    bool meetNote();

Q_SIGNALS:
    void notice(const QString& sentence);
    void stepAsked(int by);

private:
    void fillWork();
    void beginAtOpen();
    const AdjustmentWork* work() const;
    const Step* currentStep() const;
    const Step* stepNamed(const std::string& id) const;
    int openLines(const AdjustmentWork&) const;
    void follow(int at);
    void sayWhy();
    bool askAmount(const QString& first);
    bool toggle(int key);
    bool tickOpen();
    bool tickStep(const std::string& id, std::optional<double> amount);
    void goOn();
    bool notDone(const std::string& id);
    bool takeBack();
    bool stopped();
    bool nextWork(int by);

    Workbench& m_bench;
    WorkPage& m_page;
    const PlanTools& m_tools;
    AdjustmentSheet m_sheet;
    std::map<std::string_view, std::vector<const AdjustmentWork*>> m_works; // by step, in the order of the list
    LineStates m_states;
    std::string_view m_step; // whose lines are shown
    std::size_t m_at = 0;    // which of its works
};

} // namespace hammerline
