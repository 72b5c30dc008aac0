// Adjust: the staged plan, its steps under the access they need, ticked off as set to the aim or with what was done.
#include "core/operation/amount.h"
#include "core/plan/plan_in_force.h"
#include "ui/print/sheets.h"
#include "ui/stations/adjust_rows.h"
#include "ui/stations/plan_questions.h"
#include "ui/stations/stations.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/empty_state.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QStackedWidget>
#include <QUuid>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

QScrollArea* scrolled(QLabel* label, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setWidget(label);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setBackgroundRole(QPalette::Base);
    area->setAccessibleName(QCoreApplication::translate("AdjustStation", "What the plan leads to"));
    label->setBackgroundRole(QPalette::Base);
    return area;
}

class AdjustStation : public Station {
    Q_DECLARE_TR_FUNCTIONS(AdjustStation)
public:
    explicit AdjustStation(Workbench& workbench) : Station(workbench) {
        buildTools();
        build();
        connect(&bench(), &Workbench::recordChanged, this, [this] { refresh(); });
        connect(&bench(), &Workbench::passChanged, this, [this] { refresh(); });
        connect(&bench(), &Workbench::planChanged, this, [this] { fill(); });
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
        return {{tr("Space"), tr("set to the aim")},
                {QStringLiteral("0…9"), tr("amount really done")},
                {tr("Backspace"), tr("not done")},
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
        if (m_order->currentKey() <= 0) beginWithWork();
        (m_lines->rows().empty() ? static_cast<QWidget*>(m_order) : m_lines)->setFocus();
    }
    QList<QWidget*> panels() override { return {m_order, m_lines}; }
    void print() override {
        const Plan* plan = bench().plan();
        if (!plan) return;
        const QString refused =
            previewSheet(this, static_cast<int>(SheetKind::adjustment), *bench().record(), plan->pass, plan);
        if (!refused.isEmpty()) Q_EMIT notice(refused);
    }

private:
    void buildTools() {
        m_tools = new QWidget(this);
        auto* row = new QHBoxLayout(m_tools);
        row->setContentsMargins(0, 0, 0, 0);
        const auto choice = [&](const QString& name, const QStringList& items) {
            auto* box = makeChoice(name, m_tools);
            box->addItems(items);
            row->addWidget(box);
            connect(box, qOverload<int>(&QComboBox::activated), this, [this] { reckon(); });
            return box;
        };
        m_stage = choice(tr("Stage"), {tr("Trial notes first"), tr("Section by section"), tr("The whole piano")});
        m_stage->setCurrentIndex(2);
        m_intent = choice(tr("Aim"), {tr("What is out, least work"), tr("Everything to the aim")});
        m_float = choice(tr("May float"), {tr("Dip floats"), tr("Blow floats"), tr("Aftertouch floats")});
        m_float->setCurrentIndex(2);
        m_minutes = choice(tr("Time"), {tr("All the time"), tr("1 hour"), tr("2 hours"), tr("4 hours"), tr("8 hours")});
        auto* print = new QPushButton(tr("Print list"), m_tools);
        print->setMinimumHeight(u(7.5));
        connect(print, &QPushButton::clicked, this, [this] { this->print(); });
        row->addWidget(print);
        m_tools->hide();
    }

    void build() {
        m_order = new RowTable(tr("Order of work"), {{{}, 0}, {{}, 8.5, Qt::AlignRight}, {{}, 15.5, Qt::AlignRight}},
                               6.75, this);
        m_lines = new RowTable(tr("Lines of this work"),
                               {{tr("set"), 9},
                                {tr("note"), 22},
                                {tr("now"), 24, Qt::AlignRight},
                                {tr("turn"), 34},
                                {{}, 6, Qt::AlignRight},
                                {tr("set to"), 15, Qt::AlignRight},
                                {tr("about"), 0},
                                {tr("done"), 17, Qt::AlignRight}},
                               8.25, this);
        m_lines->setKeys([this](QKeyEvent* event) { return key(event); });
        m_workText = makeText(this);
        m_caution = makeText(this);
        m_leads = makeText(this);
        auto* left = new QWidget(this);
        auto* leftColumn = new QVBoxLayout(left);
        leftColumn->setContentsMargins(0, 0, 0, 0);
        leftColumn->setSpacing(0);
        leftColumn->addWidget(m_order, 1);
        leftColumn->addWidget(m_caution);
        auto* middle = new QWidget(this);
        auto* middleColumn = new QVBoxLayout(middle);
        middleColumn->setContentsMargins(0, 0, 0, 0);
        middleColumn->setSpacing(0);
        middleColumn->addWidget(m_workText);
        middleColumn->addWidget(m_lines, 1);
        m_orderPanel = new Panel(tr("Order of work"), left, this);
        m_workPanel = new Panel({}, middle, this);
        auto* leadsPanel = new Panel(tr("What the plan leads to"), scrolled(m_leads, this), this);
        leadsPanel->setTitle(tr("What the plan leads to"));
        auto* whole = new QWidget(this);
        auto* row = new QHBoxLayout(whole);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(0);
        // the lines to be turned by get what the two lists beside them do not need
        m_orderPanel->setMinimumWidth(u(73));
        leadsPanel->setMinimumWidth(u(64));
        row->addWidget(m_orderPanel, 24);
        row->addWidget(m_workPanel, 60);
        row->addWidget(leadsPanel, 20);
        m_stack = new QStackedWidget(this);
        m_empty = new EmptyState({}, this);
        m_stack->addWidget(whole);
        m_stack->addWidget(m_empty);
        m_asked = makeText(this);
        m_asked->setAccessibleName(tr("Asked before the plan"));
        auto* outer = new QVBoxLayout(this);
        outer->setContentsMargins(0, 0, 0, 0);
        outer->setSpacing(0);
        outer->addWidget(m_asked);
        outer->addWidget(m_stack, 1);
        connect(new QShortcut(Qt::Key_A, this), &QShortcut::activated, this, [this] { answerFirst(); });
        connect(m_order, &RowTable::moved, this, [this] { fillWork(); });
        connect(m_order, &RowTable::chosen, this, [this] { m_lines->setFocus(); });
        connect(m_lines, &RowTable::moved, this, [this](int at) { follow(at); });
        connect(m_lines, &RowTable::chosen, this, [this] { tickCurrent({}); });
    }

    std::optional<PlanOptions> options() const {
        PlanOptions options;
        options.stage = static_cast<Stage>(std::max(0, m_stage->currentIndex()));
        options.intent = static_cast<Intent>(std::max(0, m_intent->currentIndex()));
        options.floating = static_cast<Float>(std::max(0, m_float->currentIndex()));
        constexpr std::array kHours = {0, 1, 2, 4, 8};
        if (const int i = m_minutes->currentIndex(); i > 0)
            options.minutes = 60.0 * kHours.at(static_cast<std::size_t>(i));
        return options;
    }

    void reckon() {
        if (!bench().record() || !bench().pass()) return;
        auto plan = planInForce(*bench().record(), bench().sheet(), bench().passNumber(), options());
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
        m_stack->setCurrentIndex(plan && view ? 0 : 1);
        m_asked->setVisible(false);
        m_empty->setText(
            tr("No plan yet: three trial notes and 12 readings are enough for a first one. Ctrl+R reckons it."));
        if (plan && view) {
            m_sheet = adjustmentSheet(*bench().record(), *view, *plan);
            m_done.clear();
            m_doneIds.clear();
            for (const Done& done : bench().record()->done)
                if (!plan->uuid.empty() && done.plan == plan->uuid) {
                    m_doneIds.insert(done.step);
                    m_done[done.step] = done.toAim    ? tr("to aim")
                                        : done.amount ? QString::number(*done.amount, 'g', 3)
                                                      : QString();
                }
            m_order->setRows(orderRows(m_sheet, m_doneIds));
            m_orderPanel->setTitle(tr("Order of work"), timeText(m_sheet.minutes));
            showAsked(*plan);
            m_leads->setText(planText(*plan, *view, *bench().record(), m_sheet));
            m_caution->setText(words::caution("tipping").toHtmlEscaped());
            fillWork();
        }
        Q_EMIT wordsChanged();
    }

    /// What the survey still has to say before this plan means anything.
    void showAsked(const Plan& plan) {
        const auto open = openQuestions(plan, *bench().record());
        m_asked->setVisible(!open.empty());
        if (open.empty()) return;
        QString text =
            tr("<b>Asked before this plan:</b> %1").arg(words::askFirstSentence(open.front()).toHtmlEscaped());
        if (open.size() > 1) text += tr(" (%n more)", nullptr, static_cast<int>(open.size()) - 1);
        m_asked->setText(text + QStringLiteral(" &nbsp;<b>A</b> ") + tr("answers."));
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
                                   [this](const AdjustmentLine& l) { return m_doneIds.contains(l.step->id); }) &&
               std::ranges::all_of(work.moves, [this](const CommonMove& m) { return m_doneIds.contains(m.step->id); });
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
        m_order->setCurrentKey((open ? open : first)->number);
        fillWork();
    }

    void fillWork() {
        const AdjustmentWork* work = workOf(m_sheet, m_order->currentKey());
        m_work = work;
        if (!work) {
            const bool mending = m_order->currentKey() == 0;
            m_workPanel->setTitle(mending ? tr("Mend first") : tr("Nothing to adjust"));
            m_workText->setText(mending ? tr("These notes wait for the survey's work. Ctrl+2 shows it.") +
                                              QStringLiteral("<br><br>") + mendText(m_sheet)
                                        : tr("Every reading of this pass lies where it should."));
            m_lines->setRows({});
            return;
        }
        int ready = 0;
        const auto all = work->lines.size() + work->moves.size();
        for (const AdjustmentLine& line : work->lines)
            ready += m_doneIds.contains(line.step->id) ? 1 : 0;
        for (const CommonMove& move : work->moves)
            ready += m_doneIds.contains(move.step->id) ? 1 : 0;
        m_workPanel->setTitle(words::name(work->operation),
                              tr("%1 of %2 ticked · from the bass end").arg(ready).arg(all));
        m_workText->setText(workText(*work, *bench().piano()));
        m_lines->setRows(workRows(*work, *bench().piano(), m_done));
    }

    void follow(int at) {
        if (!m_work || at < 0 || at >= static_cast<int>(m_work->lines.size())) return;
        const AdjustmentLine& line = m_work->lines[static_cast<std::size_t>(at)];
        bench().setCell({line.note, line.step->aimDimension});
    }

    bool key(QKeyEvent* event) {
        switch (event->key()) {
        case Qt::Key_Space:
            return tickCurrent({});
        case Qt::Key_Backspace:
            return takeBack();
        case Qt::Key_S:
            return stopped();
        case Qt::Key_PageDown:
            return nextWork(1);
        case Qt::Key_PageUp:
            return nextWork(-1);
        case Qt::Key_R:
            if (!(event->modifiers() & Qt::ControlModifier)) return false;
            reckon();
            return true;
        default:
            break;
        }
        const QString typed = event->text();
        if (typed.size() == 1 && (typed[0].isDigit() || typed[0] == QLatin1Char('.') || typed[0] == QLatin1Char('-')))
            return askAmount(typed);
        return false;
    }

    bool nextWork(int by) {
        const auto& rows = m_order->rows();
        int here = -1;
        for (std::size_t i = 0; i < rows.size(); ++i)
            if (rows[i].heading.isEmpty() && rows[i].key == m_order->currentKey()) here = static_cast<int>(i);
        for (int i = here + by; i >= 0 && i < static_cast<int>(rows.size()); i += by)
            if (rows[static_cast<std::size_t>(i)].heading.isEmpty()) {
                m_order->setCurrentKey(rows[static_cast<std::size_t>(i)].key);
                fillWork();
                break;
            }
        return true;
    }

    /// What was really done, in turns or mm, in the direction of the line.
    bool askAmount(const QString& first) {
        const Step* step = m_work ? stepOf(*m_work, m_lines->currentKey()) : nullptr;
        if (!step || step->unit == AmountUnit::none) return true;
        const AmountUnit unit = unitOf(step->operation, *bench().piano());
        const bool turns = unit == AmountUnit::turn;
        const auto typed =
            Dialogs::now().ask(this, tr("Really done"), turns ? tr("Turns (1/8, 0.25):") : tr("Millimetres:"), first);
        if (!typed || typed->isEmpty()) return true;
        const auto read = parseAmount(typed->trimmed().toStdString(), unit);
        if (!read) {
            Q_EMIT notice((turns ? tr("\"%1\" is no amount of turns. Type a number or a fraction, such as 1/8.")
                                 : tr("\"%1\" is no length. Type millimetres, such as 0.4."))
                              .arg(*typed));
            return true;
        }
        // typed as a size; its sign is that of the line's direction
        const double sign = directionOf(step->operation, 1, *bench().piano()) == step->direction ? 1 : -1;
        return tickCurrent(sign * *read);
    }

    bool tickCurrent(std::optional<double> amount) {
        const Plan* plan = bench().plan();
        const Step* step = m_work ? stepOf(*m_work, m_lines->currentKey()) : nullptr;
        if (!plan || !step || m_doneIds.contains(step->id)) return true;
        const std::string id = step->id;
        const auto done = doneBy(*plan, {id, amount, !amount});
        if (!done) {
            Q_EMIT notice(words::sentence(done.error()));
            return true;
        }
        const int at = m_lines->currentKey();
        if (store(*plan, *done)) {
            m_lines->setCurrentKey(
                std::min(at + 1, static_cast<int>(m_work ? m_work->lines.size() + m_work->moves.size() : 1) - 1));
            follow(m_lines->currentKey());
        }
        return true;
    }

    /// The first tick freezes the plan in the same act.
    bool store(const Plan& plan, Done done) {
        std::optional<FrozenPlan> frozen;
        const std::string uuid =
            plan.uuid.empty() ? QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString() : plan.uuid;
        if (plan.uuid.empty()) frozen = freeze(plan, uuid);
        done.plan = uuid;
        Plan own = plan;
        own.uuid = uuid;
        if (const auto ticked = bench().tick(std::array{done}, frozen); !ticked) {
            Q_EMIT notice(words::sentence(ticked.error()));
            return false;
        }
        bench().setPlan(std::move(own));
        return true;
    }

    bool takeBack() {
        const auto undone = bench().undo();
        if (!undone) Q_EMIT notice(words::sentence(undone.error()));
        return true;
    }

    /// A screw that does not turn is a finding: to be mended before the note is regulated.
    bool stopped() {
        const Step* step = m_work ? stepOf(*m_work, m_lines->currentKey()) : nullptr;
        if (!step || !step->note) return true;
        const bool capstan = step->operation == operation::capstanTurn;
        if (step->operation != operation::letOffTurn && !capstan) return true;
        const std::string text =
            std::to_string(step->note->value) + (capstan ? " capstan" : " let-off-screw") + " seized";
        auto findings = parseFindings(text, *bench().piano());
        if (!findings) {
            Q_EMIT notice(words::sentence(findings.error()));
            return true;
        }
        if (const auto added = bench().addFindings(*findings); !added) Q_EMIT notice(words::sentence(added.error()));
        return true;
    }

    AdjustmentSheet m_sheet;
    const AdjustmentWork* m_work = nullptr;
    std::map<std::string, QString> m_done;
    std::set<std::string> m_doneIds;
    RowTable *m_order = nullptr, *m_lines = nullptr;
    Panel *m_orderPanel = nullptr, *m_workPanel = nullptr;
    QLabel *m_workText = nullptr, *m_leads = nullptr, *m_caution = nullptr, *m_asked = nullptr;
    QStackedWidget* m_stack = nullptr;
    EmptyState* m_empty = nullptr;
    QWidget* m_tools = nullptr;
    QComboBox *m_stage = nullptr, *m_intent = nullptr, *m_float = nullptr, *m_minutes = nullptr;
};

} // namespace

Station* makeAdjustStation(Workbench& workbench) {
    return new AdjustStation(workbench);
}

} // namespace hammerline
