// Adjust: the staged plan, its steps under the access they need, ticked off as set to the aim or with what was done.
#include "core/plan/plan_in_force.h"
#include "core/work/evidence.h"
#include "ui/print/sheets.h"
#include "ui/stations/adjust_page.h"
#include "ui/stations/adjust_text.h"
#include "ui/stations/adjust_ticks.h"
#include "ui/stations/adjust_tools.h"
#include "ui/stations/amount_field.h"
#include "ui/stations/plan_questions.h"
#include "ui/stations/stations.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <QShortcut>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <utility>

namespace hammerline {

namespace {

class AdjustStation : public Station {
    Q_DECLARE_TR_FUNCTIONS(AdjustStation)
public:
    explicit AdjustStation(Workbench& workbench) : Station(workbench) {
        m_tools = new AdjustTools(this);
        m_tools->hide();
        connect(m_tools, &AdjustTools::chosen, this, [this] { reckon(); });
        connect(m_tools, &AdjustTools::printAsked, this, [this] { print(); });
        m_page = new AdjustPage(this);
        auto* column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->addWidget(m_page);
        connect(m_page, &AdjustPage::reckonAsked, this, [this] { reckon(); });
        connect(new QShortcut(QKeySequence(QStringLiteral("Ctrl+R")), this), &QShortcut::activated, this,
                [this] { reckon(); });
        connect(new QShortcut(Qt::Key_A, this), &QShortcut::activated, this, [this] { answerFirst(); });
        RowTable &order = m_page->order(), &lines = m_page->lines();
        lines.setKeys([this](QKeyEvent* event) { return key(event); });
        connect(&order, &RowTable::moved, this, [this] { fillWork(); });
        connect(&order, &RowTable::chosen, this, [this] { m_page->lines().setFocus(); });
        connect(&lines, &RowTable::moved, this, [this](int at) { follow(at); });
        connect(&lines, &RowTable::boxClicked, this, [this](int key) { toggle(key); });
        connect(&bench(), &Workbench::recordChanged, this, [this] { refresh(); });
        connect(&bench(), &Workbench::passChanged, this, [this] { refresh(); });
        connect(&bench(), &Workbench::planChanged, this, [this] { fill(); });
        connect(&bench(), &Workbench::noteChanged, this, [this] {
            if (isVisible()) meetNote(); // Ctrl+G and the strip lead to the note's line
        });
    }

    QString context() const override {
        const Plan* plan = bench().plan();
        if (!plan) return tr("no plan yet");
        return (plan->uuid.empty() ? tr("A plan from pass %1, not acted on yet · %2 in all")
                                   : tr("The plan from pass %1 in work · %2 in all"))
            .arg(plan->pass)
            .arg(timeText(plan->minutes));
    }
    QWidget* tools() override { return m_tools; }
    QList<KeyHint> hints() const override {
        return {{tr("Space"), tr("set to the aim, or not")},
                {tr("Enter"), tr("set, and on")},
                {QStringLiteral("0…9"), tr("amount really done")},
                {tr("Backspace"), tr("this line not done")},
                {QStringLiteral("S"), tr("stop: the screw does not turn")},
                {QStringLiteral("PgDn"), tr("next work")},
                {QStringLiteral("A"), tr("answer what is asked first")},
                {QStringLiteral("Ctrl R"), tr("reckon again")},
                {QStringLiteral("Ctrl P"), tr("print")}};
    }
    StripMarks strip() const override {
        StripMarks marks;
        const Plan* plan = bench().plan();
        if (!plan) return marks;
        marks.legend = {tr("After the plan"), tr("above: still high"), tr("below: still low")};
        for (const Expected& expected : plan->expected) {
            if (expected.verdict != Verdict::low && expected.verdict != Verdict::high) continue;
            const int side = expected.verdict == Verdict::low ? -1 : 1;
            marks.expected[expected.cell.note.value] = side * 2;
        }
        marks.plain = true;
        return marks;
    }
    void arrive() override {
        if (!bench().plan()) reckon();
        fill();
        const std::string piano = bench().record() ? bench().record()->uuid : std::string();
        const bool another =
            std::exchange(m_piano, piano) != piano; // the row of another piano's work says nothing here
        if (another || m_page->order().currentKey() <= 0) beginWithWork();
        if (!meetNote()) follow(m_page->lines().currentKey());
        (m_page->lines().rows().empty() ? m_page->order() : m_page->lines()).setFocus();
    }
    /// The first open line of the step; its first line where all are ticked.
    void meetStep(const QString& step) override {
        if (!bench().piano()) return;
        const std::string wanted = step.toStdString();
        const AdjustmentWork* found = nullptr;
        const AdjustmentLine* open = nullptr;
        for (const AdjustmentVisit& visit : m_sheet.visits)
            for (const AdjustmentWork& work : visit.works)
                for (const AdjustmentLine& line : work.lines) {
                    const StepOfWork* of = stepOf(work.operation, line.note, *bench().piano());
                    const bool here = of && of->id == wanted;
                    if (!here || open) continue;
                    if (!found) found = &work;
                    if (!m_states.ticked.contains(line.step->id)) found = &work, open = &line;
                }
        if (!found) return;
        m_page->order().setCurrentKey(found->number);
        fillWork();
        if (open) m_page->lines().setCurrentKey(static_cast<int>(open - found->lines.data()));
        follow(m_page->lines().currentKey());
        m_page->lines().setFocus();
    }
    QList<QWidget*> panels() override { return {&m_page->order(), &m_page->lines()}; }
    void print() override {
        const Plan* plan = bench().plan();
        if (!plan) return;
        const QString refused =
            previewSheet(this, static_cast<int>(SheetKind::adjustment), *bench().record(), plan->pass, plan);
        if (!refused.isEmpty()) Q_EMIT notice(refused);
    }

private:
    void reckon() {
        if (!bench().record() || !bench().pass()) return;
        auto plan = planInForce(*bench().record(), bench().sheet(), bench().passNumber(), m_tools->options());
        if (!plan) {
            Q_EMIT notice(words::sentence(plan.error()));
            return;
        }
        bench().setPlan(std::move(*plan));
    }

    /// The record is another one: what is ticked stays with its plan, a plan only thought is thought again.
    void refresh() {
        if (!isVisible()) return;
        if (!bench().plan() || bench().plan()->uuid.empty()) reckon();
        fill();
    }

    void fill() {
        const Plan* plan = bench().plan();
        const PassView* view = plan ? bench().view(plan->pass) : nullptr;
        if (!plan || !view) {
            m_work = nullptr;
            m_page->showNothing(
                tr("No plan yet: three trial notes and 12 readings are enough for a first one. Ctrl+R reckons it."));
        } else {
            m_sheet = adjustmentSheet(*bench().record(), *view, *plan);
            m_states = lineStates(*bench().record(), *plan);
            m_page->showOrder(m_sheet, m_states, bench().record()->piano);
            m_page->showNewer(newerReadings(*bench().record(), *plan), plan->pass);
            m_page->showSetUp(plan->setUp, *bench().piano());
            if (!plan->setUp.waits())
                m_page->showAsked(openQuestions(*plan, *bench().record()), bench().record()->piano);
            m_page->showLeads(planText(*plan, *view, *bench().record(), m_sheet));
            fillWork();
        }
        Q_EMIT wordsChanged();
    }

    /// The first question is answered as a state of the survey; a fault is named in the survey itself.
    void answerFirst() {
        const Plan* plan = bench().plan();
        if (!plan) return;
        const QString refused = answerQuestion(this, bench(), openQuestions(*plan, *bench().record()));
        if (refused == QLatin1String("survey"))
            Q_EMIT goTo(QStringLiteral("survey"));
        else if (!refused.isEmpty())
            Q_EMIT notice(refused);
    }

    bool allTicked(const AdjustmentWork& work) const {
        return std::ranges::all_of(work.lines,
                                   [this](const AdjustmentLine& l) { return m_states.ticked.contains(l.step->id); }) &&
               std::ranges::all_of(work.moves,
                                   [this](const SheetMove& m) { return m_states.ticked.contains(m.step->id); });
    }

    /// At what is first to be done, not at what waits for the survey.
    void beginWithWork() {
        const AdjustmentWork *first = nullptr, *open = nullptr;
        for (const AdjustmentVisit& visit : m_sheet.visits)
            for (const AdjustmentWork& work : visit.works) {
                if (!first) first = &work;
                if (!open && !allTicked(work)) open = &work;
            }
        if (!first) return;
        m_page->order().setCurrentKey((open ? open : first)->number);
        fillWork();
    }

    void fillWork() {
        m_work = workOf(m_sheet, m_page->order().currentKey());
        m_page->showWork(m_work, m_sheet, *bench().piano(), m_states);
    }

    void follow(int at) {
        if (!m_work || at < 0 || at >= static_cast<int>(m_work->lines.size())) return;
        const AdjustmentLine& line = m_work->lines[static_cast<std::size_t>(at)];
        bench().setCell({line.note, line.step->aimDimension});
    }

    /// The line of the current note becomes the current row; false: this work has none.
    bool meetNote() {
        if (!m_work) return false;
        const int here = m_page->lines().currentKey();
        const auto count = static_cast<int>(m_work->lines.size());
        const auto isHere = [&](int key) {
            return key >= 0 && key < count && m_work->lines[static_cast<std::size_t>(key)].note == bench().cell().note;
        };
        if (isHere(here)) return true;
        for (int key = 0; key < count; ++key)
            if (isHere(key)) {
                m_page->lines().setCurrentKey(key);
                return true;
            }
        return false;
    }

    bool key(QKeyEvent* event) {
        switch (event->key()) {
        case Qt::Key_Space:
            return toggle(m_page->lines().currentKey());
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return tickOpen();
        case Qt::Key_Backspace:
            return takeBack();
        case Qt::Key_S:
            return stopped();
        case Qt::Key_PageDown:
            return nextWork(1);
        case Qt::Key_PageUp:
            return nextWork(-1);
        default:
            break;
        }
        const QString typed = event->text();
        const bool begins = typed.size() == 1 && (typed[0].isDigit() || QStringLiteral(".,/-").contains(typed[0]));
        if (begins) return askAmount(typed);
        return false;
    }

    bool nextWork(int by) {
        if (!m_page->stepOrder(by)) return true;
        fillWork();
        if (!meetNote()) follow(m_page->lines().currentKey());
        return true;
    }

    const Step* currentStep() const { return m_work ? stepOf(*m_work, m_page->lines().currentKey()) : nullptr; }

    void saySo(const Outcome<void>& done) {
        if (!done) Q_EMIT notice(words::sentence(done.error()));
    }

    /// The field in the row, begun with the key that was typed.
    bool askAmount(const QString& first) {
        const Step* step = currentStep();
        const bool measured = step && step->unit != AmountUnit::none;
        if (!measured) return true;
        auto* field = new AmountField(m_page->lines(), *step, *bench().piano(), first);
        connect(field, &AmountField::taken, this, [this, id = step->id](double amount) {
            if (tickStep(id, amount)) goOn();
        });
        return true;
    }

    /// Ticks the line, or says that it was not done after all; the hand stays at it.
    bool toggle(int key) {
        const Step* step = m_work ? stepOf(*m_work, key) : nullptr;
        if (!step) return true;
        if (m_states.ticked.contains(step->id)) return notDone(step->id);
        (void)tickStep(step->id, {});
        return true;
    }

    /// Enter goes on: an open line is set to the aim, a ticked one stays as it is.
    bool tickOpen() {
        const Step* step = currentStep();
        if (!step) return true;
        const bool stands = m_states.ticked.contains(step->id) || tickStep(step->id, {});
        if (stands) goOn();
        return true;
    }

    const Step* stepNamed(const std::string& id) const {
        if (!bench().plan()) return nullptr;
        const auto& steps = bench().plan()->steps;
        const auto found = std::ranges::find(steps, id, &Step::id);
        return found == steps.end() ? nullptr : &*found;
    }

    /// Ticks a line, or corrects it. False: the book refused it, and it was said.
    bool tickStep(const std::string& id, std::optional<double> amount) {
        const Step* step = bench().plan() ? stepNamed(id) : nullptr;
        if (!step) return false;
        const int at = m_page->lines().currentKey();
        const auto ticked = tickOff(bench(), Step(*step), amount);
        saySo(ticked);
        m_page->lines().setCurrentKey(at);
        return ticked.has_value();
    }

    /// To the next line as it stands in the list.
    void goOn() {
        m_page->lines().stepRow(1);
        follow(m_page->lines().currentKey());
    }

    bool notDone(const std::string& id) {
        const int at = m_page->lines().currentKey();
        const auto taken = bench().untick(std::array{id});
        saySo(taken);
        if (taken) Q_EMIT notice(tr("Not done: the line is open again. Ctrl+Z brings its tick back."));
        m_page->lines().setCurrentKey(at);
        return true;
    }

    /// Backspace speaks of this line alone; what was typed elsewhere is not its to take back.
    bool takeBack() {
        const Step* step = currentStep();
        const bool ticked = step && m_states.ticked.contains(step->id);
        if (ticked) return notDone(step->id);
        Q_EMIT notice(tr("This line is not ticked. Ctrl+Z takes back what was done last, wherever it was."));
        return true;
    }

    bool stopped() {
        const Step* step = currentStep();
        if (!step) return true;
        const auto note = step->note;
        const auto noted = noteSeized(bench(), *step);
        if (!noted) {
            Q_EMIT notice(words::sentence(noted.error()));
            return true;
        }
        if (*noted && note)
            Q_EMIT notice(tr("Note %1: its screw does not turn. It went to the survey as seized. Ctrl+Z takes it back.")
                              .arg(note->value));
        else
            Q_EMIT notice(tr("This work turns no screw, so nothing was filed. Ctrl+2 takes a finding."));
        return true;
    }

    AdjustmentSheet m_sheet;
    const AdjustmentWork* m_work = nullptr;
    LineStates m_states;
    std::string m_piano; // whose works the order lists
    AdjustPage* m_page = nullptr;
    AdjustTools* m_tools = nullptr;
};

} // namespace

Station* makeAdjustStation(Workbench& workbench) {
    return new AdjustStation(workbench);
}

} // namespace hammerline
