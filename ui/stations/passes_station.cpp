// The Passes station: two passes side by side, what got worse, what this piano answers, and whether it is even.
#include "ui/print/sheets.h"
#include "ui/stations/passes_rows.h"
#include "ui/stations/station_words.h"
#include "ui/stations/stations.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/profile.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace hammerline {
namespace {

class PassesStation : public Station {
    Q_OBJECT
public:
    explicit PassesStation(Workbench& workbench) : Station(workbench) {
        setObjectName(QStringLiteral("passes"));
        m_stack = new QStackedWidget(this);
        auto* column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->addWidget(m_stack);
        m_stack->addWidget(makePage());
        m_empty = new EmptyState({}, m_stack);
        m_stack->addWidget(m_empty);
        makeTools();
        connect(&bench(), &Workbench::recordChanged, this, &PassesStation::fill);
        connect(&bench(), &Workbench::bookChanged, this, &PassesStation::fill);
        connect(&bench(), &Workbench::dimensionChanged, this, [this] {
            m_table->setCurrentKey(bench().dimension().row);
            titleProfile();
        });
        fill();
    }

    QString context() const override {
        if (!m_comparison) return {};
        int before = 0, now = 0;
        for (const DimensionComparison& each : m_comparison->dimensions) {
            before += each.outsideBefore;
            now += each.outsideNow;
        }
        return tr("Pass %1 against pass %2 · <b>%3 readings out before, %4 now</b>")
            .arg(m_comparison->to)
            .arg(m_comparison->from)
            .arg(before)
            .arg(now);
    }
    QWidget* tools() override { return m_tools; }
    QList<KeyHint> hints() const override {
        return {{QStringLiteral("↑ ↓"), tr("dimension")},
                {QStringLiteral("F6"), tr("next panel")},
                {QStringLiteral("← →"), tr("note, in the profile")},
                {QStringLiteral("Ctrl P"), tr("comparison")},
                {QStringLiteral("Ctrl M"), tr("new pass")}};
    }
    QString hintRemark() const override { return tr("passes are compared only like with like"); }
    About place() const override {
        return {bench().pass() ? std::optional(bench().passNumber()) : std::nullopt, {}, {}, {}};
    }
    void arrive() override {
        sayComparison();
        showWhatChanged();
        m_table->setFocus();
    }
    QList<QWidget*> panels() override { return {m_table, m_profile}; }
    void print() override {
        const PianoRecord* record = bench().record();
        if (!record || !m_comparison) return;
        const QString refused = previewSheet(this, static_cast<int>(SheetKind::comparison), *record, m_comparison->to,
                                             nullptr, m_comparison->from);
        if (!refused.isEmpty()) Q_EMIT notice(refused);
    }

private:
    /// Where the dimension in view has not changed, the one that changed most is shown first.
    void showWhatChanged() {
        if (!m_comparison) return;
        const auto change = [](const DimensionComparison& d) { return std::abs(d.outsideBefore - d.outsideNow); };
        const auto& all = m_comparison->dimensions;
        const auto here = std::ranges::find(all, bench().dimension(), &DimensionComparison::dimension);
        const auto most = std::ranges::max_element(all, {}, change);
        const bool changed = here != all.end() && change(*here) > 0;
        if (!changed && most != all.end()) bench().setDimension(most->dimension);
    }

    QWidget* makePage() {
        auto* page = new QWidget(m_stack);
        m_table = new RowTable(tr("Dimensions, before and now"),
                               {{tr("dimension"), 0},
                                {tr("read both times"), 17, Qt::AlignRight},
                                {tr("out before"), 19, Qt::AlignRight},
                                {{}, 24},
                                {tr("out now"), 16, Qt::AlignRight},
                                {tr("worse"), 14, Qt::AlignRight},
                                {tr("spread before"), 24, Qt::AlignRight},
                                {tr("now"), 13, Qt::AlignRight},
                                {tr("off the plan by"), 23, Qt::AlignRight}},
                               6, page);
        m_tablePanel = new Panel(tr("By dimension"), m_table, page);
        m_text = makeText(page);
        m_text->setBackgroundRole(QPalette::Base);
        auto* area = new QScrollArea(page);
        area->setWidget(m_text);
        area->setWidgetResizable(true);
        area->setFrameShape(QFrame::NoFrame);
        area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        area->setBackgroundRole(QPalette::Base);
        area->setFocusPolicy(Qt::StrongFocus); // a long text is read by keys
        area->setAccessibleName(tr("Whether it is even, and what this piano answers"));
        m_gradePanel = new Panel(tr("Is it even?"), area, page);
        m_gradePanel->setMinimumWidth(u(60));
        m_profile = new Profile(bench(), page);
        m_profilePanel = new Panel({}, m_profile, page);
        auto* top = new QHBoxLayout;
        top->setSpacing(0);
        top->addWidget(m_tablePanel, 66);
        top->addWidget(m_gradePanel, 34);
        auto* column = new QVBoxLayout(page);
        column->setContentsMargins(0, 0, 0, 0);
        column->setSpacing(0);
        column->addLayout(top, 5);
        column->addWidget(m_profilePanel, 4);
        connect(m_table, &RowTable::moved, this, [this](int key) {
            if (key >= 0) bench().setDimension(DimensionId{static_cast<std::uint8_t>(key)});
        });
        return page;
    }

    /// The dimension in view, and what the short dashes in it are.
    void titleProfile() {
        QString remark = m_profile->legend();
        if (m_comparison && m_comparison->from != m_comparison->to)
            remark =
                tr("dashes: pass %1, points: pass %2  ·  %3").arg(m_comparison->from).arg(m_comparison->to).arg(remark);
        m_profilePanel->setTitle(words::name(bench().dimension()), remark);
    }

    void makeTools() {
        m_tools = new QWidget(this);
        auto* row = new QHBoxLayout(m_tools);
        row->setContentsMargins(0, 0, 0, 0);
        m_from = makeChoice(tr("Before"), m_tools);
        m_to = makeChoice(tr("Now"), m_tools);
        for (QComboBox* box : {m_from, m_to}) {
            box->setSizeAdjustPolicy(QComboBox::AdjustToContents);
            row->addWidget(box);
            connect(box, qOverload<int>(&QComboBox::activated), this, [this] { compare(); });
        }
        m_tools->hide();
    }

    void fill() {
        const PianoRecord* record = bench().record();
        const int passes = record ? static_cast<int>(record->passes.size()) : 0;
        m_stack->setCurrentIndex(passes > 1 ? 0 : 1);
        m_empty->setText(passes == 0 ? tr("Nothing is read yet. Two passes show what changed. Ctrl+3 measures.")
                                     : tr("One pass so far. The next one shows what changed."));
        if (m_from->count() != passes) {
            for (QComboBox* box : {m_from, m_to}) {
                box->clear();
                for (int i = 1; i <= passes; ++i)
                    box->addItem(passText(record->passes[static_cast<std::size_t>(i - 1)]), i);
            }
            m_from->setCurrentIndex(0);
            m_to->setCurrentIndex(passes - 1);
        }
        compare();
    }

    static QString passText(const Pass& pass) {
        return pass.label.empty() ? tr("pass %1").arg(pass.number)
                                  : tr("pass %1, %2").arg(pass.number).arg(QString::fromStdString(pass.label));
    }

    void compare() {
        m_comparison.reset();
        const PianoRecord* record = bench().record();
        if (record && record->passes.size() > 1) {
            auto compared =
                comparePasses(*record, bench().sheet(), m_from->currentData().toInt(), m_to->currentData().toInt());
            if (compared)
                m_comparison = std::move(*compared);
            else
                Q_EMIT notice(words::sentence(compared.error()));
        }
        if (m_comparison) showComparison(*m_comparison);
        Q_EMIT wordsChanged();
    }

    void showComparison(const Comparison& comparison) {
        m_table->setRows(comparisonRows(comparison));
        m_table->setCurrentKey(bench().dimension().row);
        m_tablePanel->setTitle(tr("By dimension"),
                               tr("bars: hollow before, solid now  ·  off the plan by: what was reached, "
                                  "less what the plan led to, mm"));
        m_profile->setPasses(comparison.to, comparison.from == comparison.to ? 0 : comparison.from);
        titleProfile();
        sayComparison();
    }

    /// With the grade, which takes a plan: not for every reading that is typed while another station is in front.
    void sayComparison() {
        if (!m_comparison || !isVisibleTo(window())) return;
        const Comparison& comparison = *m_comparison;
        const auto finish = finishOf(*bench().record(), bench().sheet(), comparison.to);
        m_text->setText(comparisonText(comparison, finish.value_or(FinishLine{}), *bench().piano()));
    }

    QStackedWidget* m_stack = nullptr;
    EmptyState* m_empty = nullptr;
    RowTable* m_table = nullptr;
    Panel *m_tablePanel = nullptr, *m_gradePanel = nullptr, *m_profilePanel = nullptr;
    Profile* m_profile = nullptr;
    QLabel* m_text = nullptr;
    QWidget* m_tools = nullptr;
    QComboBox *m_from = nullptr, *m_to = nullptr;
    std::optional<Comparison> m_comparison;
};

} // namespace

Station* makePassesStation(Workbench& workbench) {
    return new PassesStation(workbench);
}

} // namespace hammerline

#include "passes_station.moc"
