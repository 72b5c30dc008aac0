// Review: one cause behind many faults first, then what is out, worst first, with the profile of the dimension below.
#include "core/sheet/check_sheet.h"
#include "core/sheet/not_read_since.h"
#include "ui/print/sheets.h"
#include "ui/stations/review_rows.h"
#include "ui/stations/stations.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/profile.h"
#include "ui/words/finish.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace hammerline {

namespace {

class ReviewStation : public Station {
    Q_DECLARE_TR_FUNCTIONS(ReviewStation)
public:
    explicit ReviewStation(Workbench& workbench) : Station(workbench) {
        build();
        buildTools();
        connect(&bench(), &Workbench::recordChanged, this, [this] { fill(); });
        connect(&bench(), &Workbench::passChanged, this, [this] { fill(); });
        connect(&bench(), &Workbench::pianoChanged, this, [this] { fillSections(); });
        connect(&bench(), &Workbench::dimensionChanged, this, [this] {
            m_dimensions->setCurrentKey(bench().dimension().row);
            m_profilePanel->setTitle(words::name(bench().dimension()), m_profile->legend());
            Q_EMIT wordsChanged();
        });
        fillSections();
    }

    QString context() const override {
        const PassView* view = bench().view();
        if (!view) return tr("nothing measured yet");
        const CheckSheet sheet = checkSheet(*bench().record(), *view);
        const Summary& s = view->review.summary;
        QString text = tr("Pass %1 · <b>%2 of %3 notes read are out</b> in %4, %5 · %6 undecided")
                           .arg(view->pass.number)
                           .arg(sheet.notesOut)
                           .arg(sheet.notesRead)
                           .arg(dimensionsText(view->review))
                           .arg(tr("%n reading(s)", nullptr, s.outside()))
                           .arg(s.undecided);
        if (const int left = notReadAgain(); left > 0) text += tr(" · %n out before and not read again", nullptr, left);
        return text;
    }
    QWidget* tools() override { return m_tools; }
    QList<KeyHint> hints() const override {
        return {{QStringLiteral("↑ ↓"), tr("reading")},       {QStringLiteral("[ ]"), tr("dimension")},
                {tr("Enter"), tr("measure again")},           {QStringLiteral("F6"), tr("next panel")},
                {QStringLiteral("Ctrl P"), tr("check list")}, {QStringLiteral("Ctrl G"), tr("go to note")}};
    }
    QString hintRemark() const override { return tr("deviation 1.0 × is the edge of the zone, not mm"); }
    /// The row that is marked is the note that is shown everywhere: where the current one is in order, the worst.
    void arrive() override {
        showText();
        (m_list->rows().empty() ? static_cast<QWidget*>(m_dimensions) : m_list)->setFocus();
        const PassView* view = bench().view();
        if (!view || m_list->rows().empty()) return;
        const auto here = std::ranges::find(view->review.ranked, bench().cell(), &Judged::cell);
        const auto listed =
            std::ranges::find(m_list->rows(), static_cast<int>(here - view->review.ranked.begin()), &ListRow::key);
        const int key = (listed == m_list->rows().end() ? m_list->rows().begin() : listed)->key;
        m_list->setCurrentKey(key);
        follow(key);
    }
    QList<QWidget*> panels() override { return {m_causes, m_list, m_dimensions, m_profile}; }
    void print() override {
        if (!bench().view()) return;
        const QString refused =
            previewSheet(this, static_cast<int>(SheetKind::check), *bench().record(), bench().passNumber(), nullptr);
        if (!refused.isEmpty()) Q_EMIT notice(refused);
    }

private:
    /// Faults of the passes before this one that it did not read again.
    int notReadAgain() const {
        std::vector<const PassView*> views;
        for (int pass = 1; pass <= bench().passNumber(); ++pass)
            views.push_back(bench().view(pass));
        return static_cast<int>(notReadSince(views).size());
    }

    void build() {
        m_list = new RowTable(tr("Readings, worst first"),
                              {{tr("rank"), 10, Qt::AlignRight},
                               {tr("note"), 25},
                               {tr("dimension"), 0},
                               {tr("mm"), 15, Qt::AlignRight},
                               {tr("zone"), 20, Qt::AlignRight},
                               {tr("where it lies"), 38},
                               {tr("deviation"), 31, Qt::AlignRight},
                               {{}, 12}},
                              7.5, this);
        m_causes = new RowTable(tr("Causes behind many faults"),
                                {{tr("one cause behind many: look here first"), 0},
                                 {tr("what would mend it"), 70},
                                 {tr("instead of"), 22, Qt::AlignRight}},
                                6.75, this);
        m_dimensions = new RowTable(tr("Counts by dimension"),
                                    {{tr("dimension"), 0},
                                     {tr("low"), 10, Qt::AlignRight},
                                     {tr("within"), 14, Qt::AlignRight},
                                     {tr("high"), 10, Qt::AlignRight},
                                     {tr("undecided"), 18, Qt::AlignRight},
                                     {tr("uneven"), 14, Qt::AlignRight}},
                                    5.5, this);
        m_text = makeText(this);
        m_profile = new Profile(bench(), this);
        m_listPanel = new Panel(tr("Worst first"), m_list, this);
        auto* right = new QWidget(this);
        auto* rightColumn = new QVBoxLayout(right);
        rightColumn->setContentsMargins(0, 0, 0, 0);
        rightColumn->setSpacing(0);
        rightColumn->addWidget(m_dimensions, 3);
        m_said = makeScrolled(m_text, this);
        rightColumn->addWidget(m_said, 2);
        auto* dimensionPanel = new Panel(tr("By dimension"), right, this);
        dimensionPanel->setTitle(tr("By dimension"), tr("readings"));
        m_profilePanel = new Panel({}, m_profile, this);

        auto* left = new QVBoxLayout;
        left->setSpacing(0);
        left->addWidget(m_causes);
        left->addWidget(m_listPanel, 1);
        auto* top = new QHBoxLayout;
        top->setSpacing(0);
        top->addLayout(left, 2);
        top->addWidget(dimensionPanel, 1);
        auto* whole = new QWidget(this);
        auto* column = new QVBoxLayout(whole);
        column->setContentsMargins(0, 0, 0, 0);
        column->setSpacing(0);
        column->addLayout(top, 5);
        column->addWidget(m_profilePanel, 4);
        m_stack = new QStackedWidget(this);
        m_empty = new EmptyState({}, this);
        m_stack->addWidget(whole);
        m_stack->addWidget(m_empty);
        auto* outer = new QVBoxLayout(this);
        outer->setContentsMargins(0, 0, 0, 0);
        outer->addWidget(m_stack);

        connect(m_list, &RowTable::moved, this, [this](int key) { follow(key); });
        connect(m_list, &RowTable::chosen, this, [this](int key) {
            follow(key);
            Q_EMIT goTo(QStringLiteral("measure"));
        });
        connect(m_dimensions, &RowTable::moved, this, [this](int key) {
            if (key >= 0) bench().setDimension(DimensionId{static_cast<std::uint8_t>(key)});
        });
        connect(m_causes, &RowTable::moved, this, [this] { showText(); });
        connect(m_causes, &RowTable::chosen, this, [this] { Q_EMIT goToStep(QStringLiteral("work"), {}); });
    }

    void buildTools() {
        m_tools = new QWidget(this);
        auto* row = new QHBoxLayout(m_tools);
        row->setContentsMargins(0, 0, 0, 0);
        m_show = makeChoice(tr("Show"), m_tools);
        m_show->addItems({tr("Everything out"), tr("Uneven"), tr("Undecided"), tr("Every reading")});
        m_colour = makeChoice(tr("Colour of key"), m_tools);
        m_colour->addItems({tr("All keys"), tr("Naturals"), tr("Sharps")});
        m_section = makeChoice(tr("Section"), m_tools);
        m_only = makeChoice(tr("Dimension"), m_tools);
        auto* plan = m_plan = makeMainButton(tr("Make a plan"), m_tools);
        for (QComboBox* box : {m_show, m_only, m_section, m_colour}) {
            row->addWidget(box);
            connect(box, qOverload<int>(&QComboBox::activated), this, [this] { fill(); });
        }
        row->addWidget(plan);
        connect(plan, &QPushButton::clicked, this, [this] {
            const Plan* shown = bench().plan();
            const bool ofAnotherPass = shown && shown->pass != bench().passNumber();
            if (ofAnotherPass) bench().setPlan(std::nullopt); // made anew there, of the pass looked at here
            Q_EMIT goToStep(QStringLiteral("work"), {});
        });
        m_tools->hide();
    }

    void fillSections() {
        m_section->clear();
        m_section->addItem(tr("All sections"));
        m_only->clear();
        m_only->addItem(tr("All dimensions"));
        if (const Piano* piano = bench().piano()) {
            const auto sections = sectionsOf(*piano);
            for (std::size_t i = 0; i < sections.size(); ++i)
                m_section->addItem(words::sectionName(sections[i], i, sections.size()));
            for (const DimensionId dimension : bench().columns())
                m_only->addItem(words::name(dimension), dimension.row);
        }
        fill();
    }

    ReviewFilter filter() const {
        ReviewFilter filter;
        filter.show = static_cast<ReviewFilter::Show>(std::max(0, m_show->currentIndex()));
        if (m_colour->currentIndex() > 0) filter.colour = static_cast<KeyColour>(m_colour->currentIndex() - 1);
        if (m_section->currentIndex() > 0) filter.section = static_cast<std::size_t>(m_section->currentIndex() - 1);
        if (m_only->currentIndex() > 0)
            filter.dimension = DimensionId{static_cast<std::uint8_t>(m_only->currentData().toInt())};
        return filter;
    }

    void fill() {
        const PassView* view = bench().view();
        const bool read = view && !view->review.ranked.empty();
        m_stack->setCurrentIndex(read ? 0 : 1);
        m_empty->setText(tr("Nothing measured in this pass. Ctrl+3."));
        m_plan->setEnabled(read);
        if (read) {
            const Piano& piano = *bench().piano();
            m_list->setRows(reviewRows(*view, piano, filter()));
            m_causes->setRows(causeRows(*view, piano));
            m_causes->setVisible(!view->causes.empty());
            const int shown = static_cast<int>(std::min<std::size_t>(view->causes.size(), 3));
            m_causes->setFixedHeight(m_causes->horizontalHeader()->sizeHint().height() + shown * u(6.75));
            m_dimensions->setRows(dimensionRows(view->review));
            m_dimensions->setCurrentKey(bench().dimension().row);
            m_listPanel->setTitle(tr("Worst first"),
                                  m_list->rows().empty()
                                      ? tr("nothing to show in this choice")
                                      : tr("%n reading(s)", nullptr, static_cast<int>(m_list->rows().size())));
            m_profile->setPasses(0, bench().passNumber() - 1);
            m_profilePanel->setTitle(words::name(bench().dimension()), m_profile->legend());
            showText();
        }
        Q_EMIT wordsChanged();
    }

    void showText() {
        const PassView* view = bench().view();
        if (!view) return;
        QString text = doubtText(view->review, *bench().piano());
        const int key = m_causes->currentKey();
        if (key >= 0 && key < static_cast<int>(view->causes.size())) {
            const Cause& cause = view->causes[static_cast<std::size_t>(key)];
            QString said = words::causeSentence(cause, *bench().piano()).toHtmlEscaped();
            for (const std::string_view check : cause.checks)
                said += QStringLiteral("<br>• ") + words::checkSentence(check).toHtmlEscaped();
            text = text.isEmpty() ? said : said + QStringLiteral("<br><br>") + text;
        }
        if (const QString line = finishText(); !line.isEmpty())
            text = text.isEmpty() ? line : line + QStringLiteral("<br><br>") + text;
        m_text->setText(text);
        m_said->setVisible(!text.isEmpty());
    }

    /// How far the piano is, by all that is known of it. It takes a plan to say so: not for every reading that is typed
    /// while this station stands behind another.
    QString finishText() const {
        if (!isVisibleTo(window())) return {};
        const auto finish = finishOf(*bench().record(), bench().sheet(), bench().passNumber());
        QStringList lines;
        if (finish) lines << words::finishSentence(*finish).toHtmlEscaped();
        for (const FromSamples& each : fromSamples(*bench().piano(), bench().view()->review))
            lines << words::samplesSentence(each, *bench().piano()).toHtmlEscaped();
        lines.removeAll(QString());
        return lines.join(QStringLiteral("<br>"));
    }

    /// The note and dimension of a row become the current ones everywhere.
    void follow(int key) {
        const PassView* view = bench().view();
        if (!view || key < 0 || key >= static_cast<int>(view->review.ranked.size())) return;
        bench().setCell(view->review.ranked[static_cast<std::size_t>(key)].cell);
    }

    RowTable *m_list = nullptr, *m_causes = nullptr, *m_dimensions = nullptr;
    Panel *m_listPanel = nullptr, *m_profilePanel = nullptr;
    QLabel* m_text = nullptr;
    QWidget* m_said = nullptr; // what holds it
    Profile* m_profile = nullptr;
    QStackedWidget* m_stack = nullptr;
    EmptyState* m_empty = nullptr;
    QPushButton* m_plan = nullptr;
    QWidget* m_tools = nullptr;
    QComboBox *m_show = nullptr, *m_colour = nullptr, *m_section = nullptr, *m_only = nullptr;
};

} // namespace

Station* makeReviewStation(Workbench& workbench) {
    return new ReviewStation(workbench);
}

} // namespace hammerline
