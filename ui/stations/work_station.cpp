// Work: every step of the work on this piano under the way it is reached, what is done, what waits; the current step
// with what for, how, which way, when it is good; ticked here, with notes.
#include "core/plan/plan_in_force.h"
#include "core/sheet/work_said.h"
#include "ui/print/sheets.h"
#include "ui/stations/stations.h"
#include "ui/stations/work_place.h"
#include "ui/stations/work_rows.h"
#include "ui/widgets/dialogs.h"
#include "ui/words/survey_names.h"
#include "ui/words/words.h"
#include "ui/words/work_now.h"

#include <QCheckBox>
#include <QCoreApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QTextBrowser>
#include <QUuid>

namespace hammerline {

namespace {

class WorkStation : public Station {
    Q_DECLARE_TR_FUNCTIONS(WorkStation)
public:
    explicit WorkStation(Workbench& workbench)
        : Station(workbench)
        , m_table(new RowTable(
              tr("Steps of the work"),
              {{{}, 7}, {tr("step"), 46}, {tr("what is left"), 0}, {tr("time"), 16, Qt::AlignRight}, {tr("state"), 28}},
              5.75))
        , m_text(new QTextBrowser(this))
        , m_all(new QCheckBox(tr("the whole job"), this)) {
        m_all->hide();
        m_text->setAccessibleName(tr("How the step is done"));
        m_text->setFrameShape(QFrame::NoFrame);
        m_text->document()->setDocumentMargin(u(3)); // in line with the panel's head
        m_text->setFont(face(Text::body));
        m_text->setMinimumWidth(u(80));
        m_steps = new Panel(tr("The work"), m_table, this);
        m_how = new Panel(tr("This step"), m_text, this);
        auto* row = new QHBoxLayout(this);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(0);
        row->addWidget(m_steps, 3);
        row->addWidget(m_how, 2);
        m_table->setKeys([this](QKeyEvent* event) { return key(event); });
        connect(m_table, &RowTable::moved, this, [this] { showStep(); });
        connect(m_table, &RowTable::chosen, this, [this] { goThere(); });
        connect(m_all, &QCheckBox::toggled, this, [this](bool on) { wantWhole(on); });
        connect(&bench(), &Workbench::recordChanged, this, [this] { refresh(); });
    }

    QString context() const override {
        if (!bench().record()) return tr("no piano yet");
        return tr("%1 left").arg(timeText(m_now.minutes));
    }
    QWidget* tools() override { return m_all; }
    QList<KeyHint> hints() const override {
        return {{tr("Space"), tr("done, or not after all")},
                {tr("Enter"), tr("go and do it")},
                {QStringLiteral("D"), tr("done at some notes")},
                {QStringLiteral("N"), tr("not needed here")},
                {QStringLiteral("Ctrl P"), tr("print")}};
    }
    StripMarks strip() const override {
        StripMarks marks;
        marks.plain = true;
        if (const StepNow* now = current()) marks.named = now->notes;
        return marks;
    }
    void arrive() override {
        fill();
        if (m_now.next.step) m_table->setCurrentKey(placeOfStep(m_now.next.step->step->id));
        showStep();
        m_table->setFocus();
    }
    void meetStep(const QString& step) override {
        const int at = placeOfStep(step.toStdString());
        if (at < 0) return;
        m_table->setCurrentKey(at);
        showStep();
    }
    QList<QWidget*> panels() override { return {m_table, m_text}; }
    void print() override {
        if (!bench().record()) return;
        const QString refused =
            previewSheet(this, static_cast<int>(SheetKind::work), *bench().record(), bench().passNumber(), nullptr);
        if (!refused.isEmpty()) Q_EMIT notice(refused);
    }

private:
    const StepNow* current() const {
        const int at = m_table->currentKey();
        const bool there = at >= 0 && at < static_cast<int>(m_now.steps.size());
        return there ? &m_now.steps[static_cast<std::size_t>(at)] : nullptr;
    }

    int placeOfStep(std::string_view id) const {
        for (std::size_t i = 0; i < m_now.steps.size(); ++i)
            if (m_now.steps[i].step->id == id) return static_cast<int>(i);
        return -1;
    }

    void refresh() {
        if (isVisible()) fill(), showStep();
    }

    void fill() {
        const PianoRecord* record = bench().record();
        m_now = record ? workNow(*record) : WorkNow{};
        m_table->setRows(record ? workRows(m_now, record->piano, m_now.whole) : std::vector<ListRow>{});
        m_all->blockSignals(true);
        m_all->setChecked(m_now.whole);
        m_all->blockSignals(false);
        m_all->setEnabled(record && bench().canWrite());
        Q_EMIT wordsChanged();
    }

    void showStep() {
        const StepNow* now = current();
        m_text->setHtml(now ? workStepHtml(*now, *bench().piano()) : QString());
        Q_EMIT wordsChanged();
    }

    /// Where the step is done: its readings, its lines, its parts. What is only ticked is ticked here.
    void goThere() {
        const StepNow* now = current();
        if (!now) return;
        const WorkPlace place = placeOf(*now);
        if (place.station == QLatin1String("work")) return askNotes();
        if (place.cell) bench().setCell(*place.cell);
        Q_EMIT goToStep(place.station, place.step);
    }

    void wantWhole(bool on) {
        if (const auto set = bench().setPreference("job", on ? "whole" : "asked"); !set)
            Q_EMIT notice(words::sentence(set.error()));
    }

    bool key(QKeyEvent* event) {
        const StepNow* now = current();
        if (!now || event->modifiers() != Qt::NoModifier) return false;
        if (event->key() == Qt::Key_Space) {
            const bool done = now->state == StepState::done || now->state == StepState::notHere;
            return say({.step = std::string(now->step->id),
                        .what = done ? StepSaid::What::undone : StepSaid::What::done,
                        .notes = {},
                        .remark = {}}),
                   true;
        }
        if (event->key() == Qt::Key_D) return askNotes(), true;
        if (event->key() == Qt::Key_N) return askReason(), true;
        return false;
    }

    void say(const StepSaid& said) {
        const PianoRecord& record = *bench().record();
        std::optional<Plan> plan;
        if (!record.passes.empty() && record.passes.back().readingCount() > 0)
            if (auto made = planInForce(record, bench().sheet(), record.passes.back().number, {}))
                plan = std::move(*made);
        const std::string uuid = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
        const auto work = sayStep(said, record, plan ? &*plan : nullptr, uuid);
        if (!work) {
            Q_EMIT notice(words::sentence(work.error()));
            return;
        }
        if (work->empty()) {
            Q_EMIT notice(tr("This step was not ticked by hand: the survey, the readings or the plan say it is done. "
                             "Undo (Ctrl+Z) takes back what they were told."));
            return;
        }
        if (const auto written = bench().sayWork(*work); !written) Q_EMIT notice(words::sentence(written.error()));
    }

    void askNotes() {
        const StepNow* now = current();
        if (!now) return;
        const std::string id(now->step->id);
        const auto typed = Dialogs::now().ask(
            this, words::stepName(id), tr("Done at these notes (all: the whole step):"),
            now->notes.empty() ? QStringLiteral("all") : QString::fromStdString(writeNotes(now->notes)));
        if (!typed) return;
        StepSaid said{.step = id, .notes = {}, .remark = {}};
        if (typed->trimmed() != QLatin1String("all")) {
            auto notes = parseNotes(typed->trimmed().toStdString(), *bench().piano());
            if (!notes) {
                Q_EMIT notice(words::sentence(notes.error()));
                return;
            }
            said.notes = std::move(*notes);
        }
        say(said);
    }

    void askReason() {
        const std::string id(current()->step->id);
        const auto typed = Dialogs::now().ask(this, words::stepName(id), tr("Not needed on this piano, because:"), {});
        if (!typed) return;
        say({.step = id, .what = StepSaid::What::notHere, .notes = {}, .remark = typed->trimmed().toStdString()});
    }

    RowTable* m_table;
    QTextBrowser* m_text;
    QCheckBox* m_all;
    Panel *m_steps = nullptr, *m_how = nullptr;
    WorkNow m_now;
};

} // namespace

Station* makeWorkStation(Workbench& bench) {
    return new WorkStation(bench);
}

} // namespace hammerline
