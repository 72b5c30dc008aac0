// Work: the whole job of this piano under the ways it is reached, with what is done and what waits; the current step as
// a page, or its lines of the plan, ticked and typed where they stand.
#include "core/plan/plan_in_force.h"
#include "ui/print/sheets.h"
#include "ui/questions/questions_page.h"
#include "ui/stations/plan_tools.h"
#include "ui/stations/stations.h"
#include "ui/stations/step_ticks.h"
#include "ui/stations/work_lines.h"
#include "ui/stations/work_page.h"
#include "ui/stations/work_place.h"
#include "ui/stations/work_rows.h"
#include "ui/widgets/dialogs.h"
#include "ui/words/words.h"
#include "ui/words/work_now.h"

#include <QApplication>
#include <QKeyEvent>
#include <QShortcut>
#include <QTextBrowser>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace hammerline {

namespace {

class WorkStation : public Station {
    Q_DECLARE_TR_FUNCTIONS(WorkStation)
public:
    explicit WorkStation(Workbench& workbench) : Station(workbench) {
        m_tools = new PlanTools(this);
        m_tools->hide();
        m_page = new WorkPage(workbench, this);
        m_lines = new WorkLines(workbench, *m_page, *m_tools, this);
        auto* column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->addWidget(m_page);
        connect(m_tools, &PlanTools::chosen, m_lines, &WorkLines::reckon);
        connect(m_tools, &PlanTools::printAsked, this, [this] { print(); });
        connect(m_page, &WorkPage::wholeChosen, this, [this](bool on) { wantWhole(on); });
        connect(m_page, &WorkPage::reckonAsked, m_lines, &WorkLines::reckon);
        connect(m_lines, &WorkLines::notice, this, &WorkStation::notice);
        connect(m_lines, &WorkLines::stepAsked, this, [this](int by) { stepBy(by); });
        connect(new QShortcut(QKeySequence(QStringLiteral("Ctrl+R")), this), &QShortcut::activated, m_lines,
                &WorkLines::reckon);
        connect(new QShortcut(Qt::Key_A, this), &QShortcut::activated, this, [this] { answerFirst(); });
        connect(m_page, &WorkPage::questionsWanted, this, [this] { answerFirst(); });
        connect(&m_page->questions(), &QuestionsPage::left, this, [this] {
            m_page->leaveQuestions();
            showStep();
            takeFocus();
        });
        RowTable& steps = m_page->steps();
        steps.setKeys([this](QKeyEvent* event) { return key(event); });
        connect(&steps, &RowTable::moved, this, [this] {
            if (m_page->steps().hasFocus()) m_page->leaveQuestions(); // another step is looked at
            showStep();
        });
        connect(&steps, &RowTable::chosen, this, [this] { goThere(); });
        StepPage& page = m_page->step();
        connect(&page, &StepPage::allAsked, this, [this] { sayDone(); });
        connect(&page, &StepPage::notesTyped, this, [this](const QString& typed) { doneAt(typed); });
        connect(&page, &StepPage::notHereAsked, this, [this] { askReason(); });
        connect(&page, &StepPage::goAsked, this, [this] { goThere(); });
        connect(&page, &StepPage::left, &steps, [&steps] { steps.setFocus(); });
        connect(qApp, &QApplication::focusChanged, this, [this](QWidget* from, QWidget* to) {
            const auto isOurs = [this](QWidget* each) { return each == &m_page->steps() || each == &m_page->lines(); };
            const bool keysChange = isOurs(from) || isOurs(to);
            // said later: a window that is being closed changes the focus, too
            if (keysChange) QMetaObject::invokeMethod(this, &Station::wordsChanged, Qt::QueuedConnection);
        });
        connect(&bench(), &Workbench::recordChanged, this, [this] { refresh(); });
        connect(&bench(), &Workbench::passChanged, this, [this] { refresh(); });
        connect(&bench(), &Workbench::planChanged, this, [this] { fill(); });
        connect(&bench(), &Workbench::noteChanged, this, [this] {
            if (isVisible() && m_page->showsLines())
                m_lines->meetNote(); // Ctrl+G and the strip lead to the note's line
        });
    }

    QString context() const override {
        if (!bench().record()) return tr("no piano yet");
        const QString left = tr("%1 left").arg(timeText(m_now.minutes));
        const Plan* plan = bench().plan();
        if (!plan) return left;
        return (plan->uuid.empty() ? tr("%1 · a plan from pass %2, not acted on yet")
                                   : tr("%1 · the plan from pass %2 in work"))
            .arg(left)
            .arg(plan->pass);
    }
    QWidget* tools() override { return m_tools; }
    QList<KeyHint> hints() const override {
        if (m_page->showsQuestions())
            return {{QStringLiteral("Y"), tr("in order, yes")}, {QStringLiteral("N"), tr("not in order, no")},
                    {QStringLiteral("L"), tr("not yet")},       {QStringLiteral("Up Down"), tr("question")},
                    {tr("Esc"), tr("on with the work")},        {QStringLiteral("Ctrl Z"), tr("take back")}};
        if (m_page->showsLines() && !m_page->steps().hasFocus())
            return {{tr("Space"), tr("set to the aim, or not")},
                    {tr("Enter"), tr("set, and on")},
                    {QStringLiteral("0…9"), tr("amount really done")},
                    {tr("Backspace"), tr("this line not done")},
                    {QStringLiteral("S"), tr("stop: the screw does not turn")},
                    {QStringLiteral("PgDn"), tr("next step")},
                    {QStringLiteral("A"), tr("answer what is asked first")},
                    {QStringLiteral("Ctrl R"), tr("reckon again")},
                    {QStringLiteral("Ctrl P"), tr("print")}};
        return {{tr("Space"), tr("done, or not after all")},
                {QStringLiteral("0…9"), tr("done at some notes")},
                {tr("Backspace"), tr("not done: the notes kept last")},
                {tr("Enter"), tr("go and do it")},
                {QStringLiteral("N"), tr("not needed here")},
                {QStringLiteral("PgDn"), tr("next step")},
                {QStringLiteral("F8"), tr("what comes next")},
                {QStringLiteral("Ctrl P"), tr("print")}};
    }
    StripMarks strip() const override {
        StripMarks marks;
        marks.plain = true;
        if (m_page->showsLines()) {
            addExpected(marks);
        } else if (const StepNow* now = current()) {
            marks.legend = {words::stepName(now->step->id), tr("bars: to do")};
            marks.named = now->notes;
        }
        return marks;
    }
    void arrive() override {
        const bool fresh = !bench().plan();
        if (fresh) m_lines->reckon();
        fill();
        if (m_lines->isSpent()) m_lines->reckon();
        const std::string piano = bench().record() ? bench().record()->uuid : std::string();
        const bool another = std::exchange(m_piano, piano) != piano;
        if (another || (fresh && m_page->showsLines())) begin();
        showStep();
        if (m_page->showsLines()) m_lines->meetNote();
        takeFocus();
    }
    void meetStep(const QString& step) override {
        if (step == kQuestionsStep) return answerFirst();
        m_page->leaveQuestions();
        if (step.isEmpty()) begin();
        const int at = placeOfStep(step.toStdString());
        if (at >= 0) m_page->steps().setCurrentKey(at);
        showStep();
        takeFocus();
    }
    QList<QWidget*> panels() override {
        return m_page->showsLines() ? QList<QWidget*>{&m_page->steps(), &m_page->lines()}
                                    : QList<QWidget*>{&m_page->steps(), &m_page->step().text()};
    }
    /// The list of what is turned where the plan has lines, else the whole work.
    void print() override {
        if (!bench().record()) return;
        const Plan* plan = bench().plan();
        const bool list = plan && m_page->showsLines();
        const QString refused = previewSheet(this, static_cast<int>(list ? SheetKind::adjustment : SheetKind::work),
                                             *bench().record(), list ? plan->pass : bench().passNumber(), plan);
        if (!refused.isEmpty()) Q_EMIT notice(refused);
    }

private:
    const StepNow* current() const {
        const int at = m_page->steps().currentKey();
        const bool there = at >= 0 && at < static_cast<int>(m_now.steps.size());
        return there ? &m_now.steps[static_cast<std::size_t>(at)] : nullptr;
    }

    int placeOfStep(std::string_view id) const {
        for (std::size_t i = 0; i < m_now.steps.size(); ++i)
            if (m_now.steps[i].step->id == id) return static_cast<int>(i);
        return -1;
    }

    /// Where the plan has lines, at the first open step that has some, else at the first open line; else at what comes
    /// next.
    void begin() {
        const auto turns = std::ranges::find_if(
            m_now.steps, [this](const StepNow& each) { return each.openNow() && m_lines->has(each.step->id); });
        const std::string_view lines = turns == m_now.steps.end() ? m_lines->firstOpenStep() : turns->step->id;
        const std::string_view next = m_now.next.step ? m_now.next.step->step->id : std::string_view{};
        m_page->steps().setCurrentKey(placeOfStep(lines.empty() ? next : lines));
        if (m_page->steps().currentKey() < 0) m_page->steps().setCurrentKey(m_page->steps().firstKey());
    }

    void takeFocus() {
        if (m_page->showsQuestions())
            m_page->questions().setFocus();
        else if (m_page->showsLines())
            m_page->lines().setFocus();
        else
            m_page->steps().setFocus();
        Q_EMIT wordsChanged();
    }

    /// The record is another one: what is ticked stays with its plan, a plan only thought is thought again.
    void refresh() {
        if (!isVisible()) return;
        if (!bench().plan() || bench().plan()->uuid.empty()) m_lines->reckon();
        fill();
    }

    void fill() {
        const PianoRecord* record = bench().record();
        const Plan* plan = bench().plan();
        const bool ofLast = plan && record && !record->passes.empty() && plan->pass == record->passes.back().number;
        m_now = !record ? WorkNow{} : ofLast ? workNow(*record, plan) : workNow(*record);
        m_lines->refresh();
        m_page->showSteps(record ? stepRows(m_now, record->piano, m_now.whole) : std::vector<ListRow>{},
                          doneOfAll(m_now, m_now.whole));
        m_page->showWhole(m_now.whole, record && bench().canWrite());
        if (isVisible()) showStep();
        Q_EMIT wordsChanged();
    }

    void showStep() {
        const StepNow* now = current();
        const bool focusInLines = m_page->lines().hasFocus();
        if (now && m_lines->has(now->step->id)) {
            m_page->showCaution(cautionHtml(*now->step, *bench().piano()));
            m_page->showDrawing(*now->step, *bench().piano());
            m_lines->show(now->step->id);
        } else {
            m_page->step().showStep(now, tr("No piano yet. Ctrl+1 begins one."));
            m_page->showStep();
            if (focusInLines) m_page->steps().setFocus();
        }
        Q_EMIT wordsChanged();
    }

    void stepBy(int by) {
        m_page->steps().stepRow(by);
        showStep();
        takeFocus();
    }

    /// Where the step is done: its readings, its lines, its parts. What is only ticked is ticked here.
    void goThere() {
        const StepNow* now = current();
        if (!now) return;
        if (m_page->showsLines()) return takeFocus();
        const WorkPlace place = placeOf(*now);
        if (place.station == QLatin1String("work")) {
            if (!m_page->step().beginNotes({})) sayDone();
            return;
        }
        if (place.cell) bench().setCell(*place.cell);
        Q_EMIT goToStep(place.station, place.step);
    }

    void wantWhole(bool on) {
        if (const auto set = bench().setPreference("job", on ? "whole" : "asked"); !set)
            Q_EMIT notice(words::sentence(set.error()));
    }

    void answerFirst() {
        if (m_page->questions().openCount() > 0)
            m_page->showQuestions();
        else
            Q_EMIT notice(tr("Nothing is asked before this plan."));
        Q_EMIT wordsChanged();
    }

    void addExpected(StripMarks& marks) const {
        const Plan* plan = bench().plan();
        if (!plan) return;
        marks.legend = {tr("After the plan"), tr("above: still high"), tr("below: still low")};
        for (const Expected& expected : plan->expected) {
            if (expected.verdict != Verdict::low && expected.verdict != Verdict::high) continue;
            const int side = expected.verdict == Verdict::low ? -1 : 1;
            marks.expected[expected.cell.note.value] = side * 2;
        }
    }

    /// Keys of the list of steps.
    bool key(QKeyEvent* event) {
        if (!current() || event->modifiers() != Qt::NoModifier) return false;
        switch (event->key()) {
        case Qt::Key_Space:
            return sayDone(), true;
        case Qt::Key_Backspace:
            return takeBackLast(), true;
        case Qt::Key_N:
            return askReason(), true;
        case Qt::Key_D:
            return m_page->step().beginNotes({}), true;
        case Qt::Key_Right:
            return takeFocus(), true;
        case Qt::Key_PageDown:
            return stepBy(1), true;
        case Qt::Key_PageUp:
            return stepBy(-1), true;
        default:
            break;
        }
        const QString typed = event->text();
        const bool digit = typed.size() == 1 && typed[0].isDigit();
        return digit && !m_page->showsLines() && m_page->step().beginNotes(typed);
    }

    /// Done, or not after all.
    void sayDone() {
        const StepNow* now = current();
        if (!now) return;
        const bool done = now->state == StepState::done || now->state == StepState::notHere;
        say({.step = std::string(now->step->id),
             .what = done ? StepSaid::What::undone : StepSaid::What::done,
             .notes = {},
             .remark = {}});
    }

    void doneAt(const QString& typed) {
        const StepNow* now = current();
        if (!now || typed.isEmpty()) return m_page->steps().setFocus();
        auto notes = parseNotes(typed.toStdString(), *bench().piano());
        if (!notes) {
            Q_EMIT notice(words::sentence(notes.error()));
            return;
        }
        m_page->step().clearNotes();
        say({.step = std::string(now->step->id), .notes = std::move(*notes), .remark = {}});
        m_page->steps().setFocus();
    }

    /// Backspace speaks of this step alone, and of the notes that were kept last.
    void takeBackLast() { say(lastKept(std::string(current()->step->id), *bench().record())); }

    void askReason() {
        const StepNow* now = current();
        if (!now) return;
        const std::string id(now->step->id);
        const auto typed = Dialogs::now().ask(this, words::stepName(id), tr("Not needed on this piano, because:"), {});
        if (!typed) return;
        say({.step = id, .what = StepSaid::What::notHere, .notes = {}, .remark = typed->trimmed().toStdString()});
    }

    void say(const StepSaid& said) {
        const auto kept = keepSaid(bench(), said);
        if (!kept)
            Q_EMIT notice(words::sentence(kept.error()));
        else if (kept->nothing)
            Q_EMIT notice(tr("This step was not ticked by hand: the survey, the readings or the plan say it is done. "
                             "Undo (Ctrl+Z) takes back what they were told."));
        else if (kept->lines > 0)
            Q_EMIT notice(tr("%n line(s) of the plan were ticked with it, as set to the aim. Ctrl+Z takes it back.",
                             nullptr, kept->lines));
    }

    PlanTools* m_tools = nullptr;
    WorkPage* m_page = nullptr;
    WorkLines* m_lines = nullptr;
    WorkNow m_now;
    std::string m_piano; // whose steps are listed
};

} // namespace

Station* makeWorkStation(Workbench& bench) {
    return new WorkStation(bench);
}

} // namespace hammerline
