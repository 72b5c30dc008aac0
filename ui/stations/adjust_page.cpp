#include "ui/stations/adjust_page.h"

#include "ui/stations/adjust_text.h"
#include "ui/widgets/empty_state.h"
#include "ui/words/survey_names.h"

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace hammerline {

namespace {

QVBoxLayout* columnIn(QWidget* widget) {
    auto* column = new QVBoxLayout(widget);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    return column;
}

QScrollArea* scrolled(QLabel* label, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setWidget(label);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setBackgroundRole(QPalette::Base);
    label->setBackgroundRole(QPalette::Base);
    return area;
}

} // namespace

AdjustPage::AdjustPage(QWidget* parent)
    : QWidget(parent)
    , m_order(new RowTable(tr("Order of work"), {{{}, 0}, {{}, 8.5, Qt::AlignRight}, {{}, 15.5, Qt::AlignRight}}, 6.75))
    , m_lines(new RowTable(tr("Lines of this work"),
                           {{tr("set"), 9},
                            {tr("note"), 22},
                            {tr("read"), 26, Qt::AlignRight},
                            {.title = tr("which way, set to"), .width = 0, .whole = true},
                            {tr("done"), 22, Qt::AlignRight}},
                           10.5))
    , m_workText(makeText(this))
    , m_leads(makeText(this))
    , m_asked(makeText(this))
    , m_stack(new QStackedWidget(this))
    , m_empty(new EmptyState({}, this)) {
    m_caution = makeText(this);
    buildNewer();
    auto* left = new QWidget;
    auto* leftColumn = columnIn(left);
    leftColumn->setContentsMargins(0, 0, 1, 0); // the hair line of the panel runs past lines and text
    leftColumn->addWidget(m_order, 1);
    leftColumn->addWidget(m_caution);
    auto* middle = new QWidget;
    auto* middleColumn = columnIn(middle);
    middleColumn->setContentsMargins(0, 0, 1, 0);
    middleColumn->addWidget(m_workText);
    middleColumn->addWidget(m_lines, 1);
    m_orderPanel = new Panel(tr("Order of work"), left, this);
    m_workPanel = new Panel({}, middle, this);
    auto* leads = scrolled(m_leads, this);
    leads->setAccessibleName(tr("What the plan leads to"));
    m_leadsPanel = new Panel(tr("What the plan leads to"), leads, this);

    auto* whole = new QWidget(this);
    m_grid = new QGridLayout(whole);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setSpacing(0);
    // the lines to be turned by get what the two lists beside them do not need
    m_leadsPanel->setMinimumWidth(u(64));
    m_grid->setColumnStretch(0, 24);
    m_grid->setColumnStretch(1, 60);
    layOut(false);
    m_stack->addWidget(whole);
    m_stack->addWidget(m_empty);
    auto* outer = columnIn(this);
    outer->addWidget(m_newer);
    outer->addWidget(m_asked);
    outer->addWidget(m_stack, 1);
}

/// A plan that was acted on stays as it is; that newer readings stand beside it is said over it.
void AdjustPage::buildNewer() {
    m_newer = new QWidget(this);
    m_newerText = makeText(m_newer);
    auto* again = new QPushButton(tr("Reckon again"), m_newer);
    again->setMinimumHeight(u(7.5));
    connect(again, &QPushButton::clicked, this, &AdjustPage::reckonAsked);
    auto* row = new QHBoxLayout(m_newer);
    row->setContentsMargins(0, u(0.5), u(3), u(0.5));
    row->addWidget(m_newerText, 1);
    row->addWidget(again);
    m_newer->hide();
}

void AdjustPage::showNewer(int readings, int planPass) {
    m_newer->setVisible(readings > 0);
    m_newerText->setText(tr("<b>%n reading(s) are newer than this plan</b>, which is of pass %1. What is ticked stays.",
                            nullptr, readings)
                             .arg(planPass));
}

/// Where three columns have no room (large type), what the plan leads to stands under the order of work, and begins
/// with the caution.
void AdjustPage::layOut(bool narrow) {
    m_narrow = narrow;
    for (QWidget* panel : {m_orderPanel, m_workPanel, m_leadsPanel})
        m_grid->removeWidget(panel);
    m_grid->addWidget(m_orderPanel, 0, 0);
    m_grid->addWidget(m_workPanel, 0, 1, 2, 1);
    m_grid->addWidget(m_leadsPanel, narrow ? 1 : 0, narrow ? 0 : 2, narrow ? 1 : 2, 1);
    m_grid->setColumnStretch(2, narrow ? 0 : 20);
    m_grid->setRowStretch(0, 3);
    m_grid->setRowStretch(1, narrow ? 2 : 0);
    m_orderPanel->setMinimumWidth(u(narrow ? 66 : 73));
    m_caution->setVisible(!narrow);
    sayLeads();
}

void AdjustPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    constexpr double kThreeColumns = 225;
    if (const bool narrow = width() < u(kThreeColumns); narrow != m_narrow) layOut(narrow);
}

void AdjustPage::showNothing(const QString& sentence) {
    m_asked->hide();
    m_empty->setText(sentence);
    m_stack->setCurrentIndex(1);
}

void AdjustPage::showOrder(const AdjustmentSheet& sheet, const LineStates& states, const Piano& piano) {
    std::set<std::string> ids;
    for (const auto& [id, said] : states.ticked)
        ids.insert(id);
    m_order->setRows(orderRows(sheet, ids, piano));
    m_orderPanel->setTitle(tr("Order of work"), timeText(sheet.minutes));
    m_stack->setCurrentIndex(0);
}

void AdjustPage::showWork(const AdjustmentWork* work, const AdjustmentSheet& sheet, const Piano& piano,
                          const LineStates& states) {
    m_cautionText = words::caution(piano.vertical() ? "tipping" : "grand-slide", piano).toHtmlEscaped();
    m_caution->setText(m_cautionText);
    sayLeads();
    if (!work) {
        const bool mending = m_order->currentKey() == 0;
        m_workPanel->setTitle(mending   ? tr("Mend first")
                              : m_waits ? tr("Reference notes first")
                                        : tr("Nothing to adjust"));
        m_workText->setText(mending ? tr("These notes wait for the survey's work. Ctrl+2 shows it.") +
                                          QStringLiteral("<br><br>") + mendText(sheet)
                            : m_waits ? tr("These readings may be the bench's and not the piano's. They are adjusted "
                                           "once the reference notes agree.")
                                      : tr("Every reading of this pass lies where it should."));
        m_lines->setRows({});
        return;
    }
    const auto& ticked = states.ticked;
    const auto ready =
        std::ranges::count_if(work->lines, [&](const auto& line) { return ticked.contains(line.step->id); }) +
        std::ranges::count_if(work->moves, [&](const auto& move) { return ticked.contains(move.step->id); });
    m_workPanel->setTitle(
        words::name(work->operation),
        tr("%1 of %2 ticked · from the bass end").arg(ready).arg(work->lines.size() + work->moves.size()));
    m_workText->setText(workText(*work, piano));
    m_lines->setRows(workRows(*work, piano, states));
}

void AdjustPage::showLeads(const QString& html) {
    m_said = html;
    sayLeads();
}

void AdjustPage::sayLeads() {
    m_leads->setText(m_narrow ? m_cautionText + QStringLiteral("<br><br>") + m_said : m_said);
}

void AdjustPage::showSetUp(const BenchSetUp& setUp, const Piano& piano) {
    const QString said = words::benchSentence(setUp, piano).toHtmlEscaped();
    m_waits = setUp.waits();
    m_setUp = m_waits ? tr("<b>The plan waits.</b> %1").arg(said) : said;
    m_asked->setVisible(!m_setUp.isEmpty());
    m_asked->setText(m_setUp);
}

void AdjustPage::showAsked(const std::vector<std::string_view>& questions, const Piano& piano) {
    m_asked->setVisible(!questions.empty() || !m_setUp.isEmpty());
    if (questions.empty()) return;
    QString text =
        tr("<b>Asked before this plan:</b> %1").arg(words::askFirstSentence(questions.front(), piano).toHtmlEscaped());
    if (questions.size() > 1) text += tr(" (%n more)", nullptr, static_cast<int>(questions.size()) - 1);
    const QString before = m_setUp.isEmpty() ? QString() : m_setUp + QStringLiteral("<br>");
    m_asked->setText(before + text + QStringLiteral(" &nbsp;<b>A</b> ") + tr("answers."));
}

bool AdjustPage::stepOrder(int by) {
    const auto& rows = m_order->rows();
    const auto here = std::ranges::find_if(
        rows, [&](const ListRow& row) { return row.heading.isEmpty() && row.key == m_order->currentKey(); });
    for (auto i = here - rows.begin() + by; i >= 0 && i < std::ssize(rows); i += by) {
        const ListRow& row = rows[static_cast<std::size_t>(i)];
        if (!row.heading.isEmpty()) continue;
        m_order->setCurrentKey(row.key);
        return true;
    }
    return false;
}

} // namespace hammerline
