// The page of the Work station: the whole job at the left; beside it the current step as a page, or its lines of the
// plan with why each is there; above both what is asked before the plan.
#pragma once

#include "ui/stations/line_rows.h"
#include "ui/stations/step_page.h"

class QCheckBox;
class QGridLayout;

namespace hammerline {

class DoingDrawing;
class QuestionsPage;

class WorkPage : public QWidget {
    Q_OBJECT
public:
    WorkPage(Workbench&, QWidget* parent);
    RowTable& steps() { return *m_steps; }
    RowTable& lines() { return *m_lines; }
    StepPage& step() { return *m_step; }

    void showSteps(std::vector<ListRow>, const QString& remark);
    /// Whether steps that nothing asks for stand in the list too.
    void showWhole(bool whole, bool enabled);
    /// The page of the current step in the place of lines.
    void showStep();
    bool showsLines() const { return m_shown == Shown::lines; }
    /// What is asked first, as a list that is answered in place; it stays until it is left.
    void showQuestions();
    bool showsQuestions() const { return m_shown == Shown::questions; }
    QuestionsPage& questions() { return *m_questions; }
    void leaveQuestions();
    void showWork(const AdjustmentWork&, const Piano&, const LineStates&);
    /// Of the step that the lines belong to; it stands below them where they leave it room.
    void showDrawing(const StepOfWork&, const Piano&);
    /// HTML; empty note: no line is current.
    void showWhy(const QString& note, const QString& html);
    /// HTML; the cautions of the step, beside its lines.
    void showCaution(const QString&);
    /// HTML; what the readings will be.
    void showLeads(const QString&);
    void showNoPlan();
    /// Before the questions: a bench that does not hold the keys as the piano did.
    void showSetUp(const BenchSetUp&, const Piano&);
    void showAsked(const std::vector<std::string_view>& questions, const Piano&);
    /// Over the page: readings that are newer than the plan; 0: nothing to say.
    void showNewer(int readings, int planPass);

Q_SIGNALS:
    void reckonAsked();
    void wholeChosen(bool);
    void questionsWanted();

protected:
    void resizeEvent(QResizeEvent*) override;
    bool eventFilter(QObject*, QEvent*) override;

private:
    void layOut();
    void buildNewer();
    void showRows();
    void fitDrawing();
    void sayWork();
    void sayWhy();

    enum class Shown : std::uint8_t { step, lines, questions };
    void turnTo(Shown);
    void sayAsked();

    RowTable *m_steps, *m_lines;
    StepPage* m_step;
    QuestionsPage* m_questions;
    DoingDrawing* m_drawing;
    QCheckBox* m_whole;
    Panel *m_list, *m_work, *m_why;
    QLabel *m_workText, *m_whyText, *m_asked, *m_newerText = nullptr;
    QWidget* m_newer = nullptr;
    QGridLayout* m_grid;
    std::vector<ListRow> m_rows;          // as they are when there is room
    std::vector<std::string_view> m_open; // questions
    QString m_firstAsked;
    QString m_setUp, m_ways, m_line, m_caution, m_leads;
    Shown m_shown = Shown::step;
    bool m_narrow = false, m_low = false;
};

} // namespace hammerline
