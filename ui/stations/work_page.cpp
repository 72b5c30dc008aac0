#include "ui/stations/work_page.h"

#include "ui/questions/questions_page.h"
#include "ui/stations/plan_text.h"
#include "ui/widgets/doing/doing_drawing.h"
#include "ui/words/words.h"

#include <QCheckBox>
#include <QEvent>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace hammerline {

namespace {

QVBoxLayout* columnIn(QWidget* widget) {
    auto* column = new QVBoxLayout(widget);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    return column;
}

} // namespace

WorkPage::WorkPage(Workbench& bench, QWidget* parent)
    : QWidget(parent)
    , m_steps(new RowTable(tr("The whole job"),
                           {{{}, 0},
                            {.title = {}, .width = 8, .align = Qt::AlignRight, .whole = true},
                            {.title = {}, .width = 8, .align = Qt::AlignRight, .whole = true}},
                           5.75))
    , m_lines(new RowTable(tr("Lines of this work"),
                           {{tr("set"), 9},
                            {tr("note"), 22},
                            {tr("read"), 26, Qt::AlignRight},
                            {.title = tr("which way, set to"), .width = 0, .whole = true},
                            {tr("done"), 22, Qt::AlignRight}},
                           10.5))
    , m_step(new StepPage(bench, this))
    , m_questions(new QuestionsPage(bench, this))
    , m_drawing(new DoingDrawing(this))
    , m_whole(new QCheckBox(tr("with what nothing asks for"), this))
    , m_workText(makeText(this))
    , m_whyText(makeText(this))
    , m_asked(makeText(this)) {
    buildNewer();
    connect(m_asked, &QLabel::linkActivated, this, &WorkPage::questionsWanted);
    m_asked->setTextInteractionFlags(Qt::LinksAccessibleByMouse);
    auto* middle = new QWidget;
    auto* middleColumn = columnIn(middle);
    middleColumn->setContentsMargins(0, 0, 1, 0); // the hair line of the panel runs past lines and text
    middleColumn->addWidget(m_workText);
    middleColumn->addWidget(m_lines, 1);
    middleColumn->addWidget(m_drawing);
    m_drawing->hide();
    m_lines->installEventFilter(this);
    auto* left = new QWidget;
    auto* leftColumn = columnIn(left);
    leftColumn->setContentsMargins(0, 0, 1, 0);
    leftColumn->addWidget(m_steps, 1);
    auto* whatToo = new QHBoxLayout;
    whatToo->setContentsMargins(u(3), u(1), u(3), u(1));
    whatToo->addWidget(m_whole);
    leftColumn->addLayout(whatToo);
    m_whole->setFocusPolicy(Qt::TabFocus);
    connect(m_whole, &QCheckBox::toggled, this, &WorkPage::wholeChosen);
    m_list = new Panel(tr("The whole job"), left, this);
    m_work = new Panel({}, middle, this);
    QWidget* why = makeScrolled(m_whyText, this);
    why->setAccessibleName(tr("Why this line, and what the plan leads to"));
    m_why = new Panel(tr("Why this line"), why, this);

    auto* whole = new QWidget(this);
    m_grid = new QGridLayout(whole);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setSpacing(0);
    m_grid->setColumnStretch(0, 26);
    m_grid->setColumnStretch(1, 60);
    auto* outer = columnIn(this);
    outer->addWidget(m_newer);
    outer->addWidget(m_asked);
    outer->addWidget(whole, 1);
    layOut();
}

/// A plan that was acted on stays as it is; that newer readings stand beside it is said over it.
void WorkPage::buildNewer() {
    m_newer = new QWidget(this);
    m_newerText = makeText(m_newer);
    auto* again = new QPushButton(tr("Reckon again"), m_newer);
    again->setMinimumHeight(u(7.5));
    connect(again, &QPushButton::clicked, this, &WorkPage::reckonAsked);
    auto* row = new QHBoxLayout(m_newer);
    row->setContentsMargins(0, u(0.5), u(3), u(0.5));
    row->addWidget(m_newerText, 1);
    row->addWidget(again);
    m_newer->hide();
}

/// Where three columns have no room (large type), why stands under the whole job; where the page is low too, only its
/// first sentence does, above the lines. Beside a step's page it is not shown.
void WorkPage::layOut() {
    for (QWidget* each : std::initializer_list<QWidget*>{m_list, m_work, m_step, m_questions, m_why})
        m_grid->removeWidget(each);
    const bool lines = showsLines(), shownWhy = lines && !m_low, whyBelow = m_narrow && shownWhy;
    QWidget* right = m_step;
    if (lines) right = m_work;
    if (showsQuestions()) right = m_questions;
    m_grid->addWidget(m_list, 0, 0, whyBelow ? 1 : 2, 1);
    m_grid->addWidget(right, 0, 1, 2, lines ? 1 : 2);
    if (shownWhy) m_grid->addWidget(m_why, whyBelow ? 1 : 0, whyBelow ? 0 : 2, whyBelow ? 1 : 2, 1);
    for (QWidget* each : std::initializer_list<QWidget*>{m_work, m_step, m_questions})
        each->setVisible(each == right);
    m_why->setVisible(shownWhy);
    m_grid->setColumnStretch(2, shownWhy && !m_narrow ? 20 : 0);
    m_grid->setRowStretch(0, 3);
    m_grid->setRowStretch(1, whyBelow ? 2 : 0);
    m_why->setMinimumWidth(u(m_narrow ? 0 : 60));
    m_list->setMinimumWidth(u(m_narrow ? 70 : 100));
}

void WorkPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    constexpr double kThreeColumns = 225, kTwoRows = 110;
    const bool narrow = width() < u(kThreeColumns), low = narrow && height() < u(kTwoRows);
    if (narrow == m_narrow && low == m_low) return;
    m_narrow = narrow;
    m_low = low;
    layOut();
    showRows();
    sayWork();
}

void WorkPage::showSteps(std::vector<ListRow> rows, const QString& remark) {
    m_rows = std::move(rows);
    showRows();
    m_list->setTitle(tr("The whole job"), remark);
}

/// A narrow list is of names; how much is left stands on the page of the step.
void WorkPage::showRows() {
    std::vector<ListRow> rows = m_rows;
    for (ListRow& each : rows) {
        if (!m_narrow) break;
        each.headingRight.clear();
        if (!each.cells.empty()) each.cells = {each.cells.front(), {}, {}};
    }
    m_steps->setRows(std::move(rows));
}

void WorkPage::showWhole(bool whole, bool enabled) {
    const QSignalBlocker silent(m_whole);
    m_whole->setChecked(whole);
    m_whole->setEnabled(enabled);
}

void WorkPage::turnTo(Shown what) {
    if (std::exchange(m_shown, what) == what) return;
    layOut();
    sayAsked();
}

void WorkPage::showStep() {
    if (!showsQuestions()) turnTo(Shown::step);
}

void WorkPage::showQuestions() {
    turnTo(Shown::questions);
    m_questions->begin(m_open);
}

void WorkPage::leaveQuestions() {
    if (showsQuestions()) turnTo(Shown::step);
}

void WorkPage::showWork(const AdjustmentWork& work, const Piano& piano, const LineStates& states) {
    const auto& ticked = states.ticked;
    const auto ready =
        std::ranges::count_if(work.lines, [&](const auto& line) { return ticked.contains(line.step->id); }) +
        std::ranges::count_if(work.moves, [&](const auto& move) { return ticked.contains(move.step->id); });
    m_work->setTitle(words::name(work.operation, piano),
                     tr("%1 of %2 ticked · from the bass end").arg(ready).arg(work.lines.size() + work.moves.size()));
    m_ways = workText(work, piano);
    sayWork();
    m_lines->setRows(lineRows(work, piano, states));
    fitDrawing();
    if (!showsQuestions()) turnTo(Shown::lines);
}

void WorkPage::sayWork() {
    const QString first = m_line.section(QStringLiteral("<br><br>"), 0, 0);
    m_workText->setText(m_low && !first.isEmpty() ? m_ways + QStringLiteral("<br>") + first : m_ways);
}

void WorkPage::showDrawing(const StepOfWork& step, const Piano& piano) {
    (void)m_drawing->setSubject(step.drawing, kindLetters(piano));
    fitDrawing();
}

/// Lines come first: the drawing takes what a short list leaves free, or no room at all.
void WorkPage::fitDrawing() {
    constexpr double kLeast = 45, kMost = 63, kLeastWide = 120; // units
    const int body = m_lines->verticalHeader()->length() + m_lines->horizontalHeader()->height();
    const int room = m_lines->height() + (m_drawing->isHidden() ? 0 : m_drawing->height()) - body;
    const bool fits = room >= u(kLeast) && m_lines->width() >= u(kLeastWide) && !m_low;
    m_drawing->setFixedHeight(std::clamp(room, 0, u(kMost)));
    m_drawing->setVisible(fits && m_drawing->subject());
}

bool WorkPage::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_lines && event->type() == QEvent::Resize) fitDrawing();
    return QWidget::eventFilter(watched, event);
}

void WorkPage::showWhy(const QString& note, const QString& html) {
    m_why->setTitle(tr("Why this line"), note);
    m_line = html;
    sayWhy();
}

void WorkPage::showCaution(const QString& html) {
    m_caution = html;
    sayWhy();
}

void WorkPage::showLeads(const QString& html) {
    m_leads = html;
    sayWhy();
}

void WorkPage::sayWhy() {
    QStringList out;
    for (const QString& each : {m_line, m_caution, m_leads})
        if (!each.isEmpty()) out << each;
    m_whyText->setText(out.join(QStringLiteral("<hr>")));
    sayWork();
}

void WorkPage::showNoPlan() {
    m_newer->hide();
    m_setUp.clear();
    m_open.clear();
    m_firstAsked.clear();
    m_questions->show(m_open);
    sayAsked();
}

void WorkPage::showNewer(int readings, int planPass) {
    m_newer->setVisible(readings > 0);
    m_newerText->setText(tr("<b>%n reading(s) are newer than this plan</b>, which is of pass %1. What is ticked stays.",
                            nullptr, readings)
                             .arg(planPass));
}

void WorkPage::showSetUp(const BenchSetUp& setUp, const Piano& piano) {
    const QString said = words::benchSentence(setUp, piano).toHtmlEscaped();
    m_setUp = setUp.waits() ? tr("<b>The plan waits.</b> %1").arg(said) : said;
    sayAsked();
}

void WorkPage::showAsked(const std::vector<std::string_view>& questions, const Piano& piano) {
    m_open = questions;
    m_firstAsked = questions.empty() ? QString() : words::askFirstSentence(questions.front(), piano).toHtmlEscaped();
    m_questions->show(questions);
    sayAsked();
}

/// The first of the questions over the page, with the way to all of them; not while they are there themselves.
void WorkPage::sayAsked() {
    QStringList lines;
    if (!m_setUp.isEmpty()) lines << m_setUp;
    if (!m_open.empty() && !showsQuestions()) {
        QString text = tr("<b>Asked before this plan:</b> %1").arg(m_firstAsked);
        if (m_open.size() > 1) text += tr(" (%n more)", nullptr, static_cast<int>(m_open.size()) - 1);
        lines << text + QStringLiteral(" &nbsp;<b>A</b> ") +
                     QStringLiteral("<a href=\"answer\">%1</a>").arg(tr("answers them."));
    }
    m_asked->setText(lines.join(QStringLiteral("<br>")));
    m_asked->setVisible(!lines.isEmpty());
}

} // namespace hammerline
