#include "ui/stations/survey_station.h"

#include "core/survey/numbering.h"
#include "core/survey/rail_advice.h"
#include "ui/print/sheets.h"
#include "ui/stations/station_words.h"
#include "ui/stations/stations.h"
#include "ui/stations/survey_form.h"
#include "ui/stations/survey_job.h"
#include "ui/stations/survey_letters.h"
#include "ui/stations/survey_memory.h"
#include "ui/stations/survey_orders.h"
#include "ui/stations/survey_pages.h"
#include "ui/stations/survey_paint.h"
#include "ui/stations/survey_view.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/empty_state.h"
#include "ui/words/survey_names.h"

#include <QApplication>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace hammerline {

SurveyStation::SurveyStation(Workbench& workbench) : Station(workbench) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_empty = new EmptyState(tr("No piano yet. Ctrl+N enters one."), this);
    m_head = buildHead();
    m_view = new SurveyView(bench(), this);
    m_foot = buildFoot();
    column->addWidget(m_empty, 1);
    column->addWidget(m_head);
    column->addWidget(m_view, 1);
    column->addWidget(m_foot);
    buildTools();
    connect(m_view, &SurveyView::chosenChanged, this, &SurveyStation::takeFromTable);
    connect(m_view, &SurveyView::refused, this, &SurveyStation::refuse);
    connect(m_form, &SurveyForm::refused, this, &SurveyStation::refuse);
    connect(m_pages, &SurveyPages::refused, this, &SurveyStation::refuse);
    connect(m_pages, &SurveyPages::pageChanged, this, &Station::wordsChanged);
    connect(new QShortcut(Qt::CTRL | Qt::Key_PageDown, this), &QShortcut::activated, m_pages,
            [this] { m_pages->step(1); });
    connect(new QShortcut(Qt::CTRL | Qt::Key_PageUp, this), &QShortcut::activated, m_pages,
            [this] { m_pages->step(-1); });
    connect(m_form, &SurveyForm::namedChanged, this, &Station::wordsChanged);
    connect(m_form, &SurveyForm::partChosen, this, &SurveyStation::chooseInForm);
    connect(m_view, &SurveyView::told, m_rows, &QLabel::setText);
    connect(new QShortcut(Qt::Key_F2, this), &QShortcut::activated, m_form, &SurveyForm::takeFocus);
    connect(m_form, &SurveyForm::added, this, [this](const Finding& finding) {
        m_view->rememberLast(finding);
        m_view->setFocus();
    });
    connect(m_form, &SurveyForm::sameAskedFor, this, [this] {
        m_view->saySameAsLast();
        m_view->setFocus();
    });
    const auto add = [this] { m_form->add(); };
    connect(new QShortcut(Qt::CTRL | Qt::Key_Return, this), &QShortcut::activated, this, add);
    connect(new QShortcut(Qt::CTRL | Qt::Key_Enter, this), &QShortcut::activated, this, add);
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        if (now && isAncestorOf(now)) Q_EMIT wordsChanged();
    });
    connect(&bench(), &Workbench::recordChanged, this, &SurveyStation::refresh);
    connect(&bench(), &Workbench::pianoChanged, this, &SurveyStation::refresh);
    refresh();
}

QWidget* SurveyStation::buildHead() {
    m_rows = new QLabel(this);
    QWidget* bar = titleBar(this, tr("Part by note"), m_rows);
    bar->layout()->addWidget(new SurveyLegend(bar));
    return bar;
}

QWidget* SurveyStation::buildFoot() {
    auto* foot = new QWidget(this);
    foot->setAutoFillBackground(true);
    foot->setBackgroundRole(QPalette::Base);
    auto* halves = new QHBoxLayout(foot);
    halves->setContentsMargins(0, 0, 0, 0);
    halves->setSpacing(1);
    auto* left = new QVBoxLayout;
    left->setSpacing(0);
    left->addWidget(titleBar(foot, tr("Finding"), new QLabel(tr("goes to every note named"), foot)));
    m_form = new SurveyForm(bench(), foot);
    left->addWidget(m_form, 1);
    auto* right = new QVBoxLayout;
    right->setSpacing(0);
    m_pages = new SurveyPages(bench(), foot);
    right->addWidget(m_pages, 1);
    m_remarks = new QWidget(foot);
    auto* remarks = new QVBoxLayout(m_remarks);
    remarks->setContentsMargins(0, 0, 0, 0);
    remarks->setSpacing(0);
    right->addWidget(m_remarks);
    m_asked = new QLabel(m_remarks);
    m_caution = new QLabel(m_remarks);
    for (QLabel* line : {m_asked, m_caution}) {
        line->setFont(face(Text::label));
        line->setWordWrap(true);
        line->setContentsMargins(u(3), u(1), u(3), u(1));
        remarks->addWidget(line);
    }
    halves->addLayout(left, 1);
    halves->addLayout(right, 1);
    return foot;
}

/// In a low window (large type) the table of parts goes before what the Work station asks and warns of as well.
void SurveyStation::resizeEvent(QResizeEvent* event) {
    Station::resizeEvent(event);
    const bool low = height() < u(110);
    m_remarks->setVisible(!low);
    m_foot->setFixedHeight(u(low ? 41 : 54));
}

void SurveyStation::buildTools() {
    m_tools = new QWidget(this);
    auto* row = new QHBoxLayout(m_tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(u(2));
    auto* label = new QLabel(tr("&Show"), m_tools);
    label->setFont(face(Text::body));
    m_shown = new QComboBox(m_tools);
    label->setBuddy(m_shown);
    m_shown->setAccessibleName(tr("Parts shown"));
    m_shown->addItems({tr("All parts"), tr("To do or watch"), tr("Not looked at"), tr("Mend first")});
    m_shown->setFont(face(Text::body));
    m_shown->setFixedHeight(u(7.5));
    row->addWidget(label);
    row->addWidget(m_shown);
    connect(m_shown, &QComboBox::activated, this, [this](int i) {
        m_view->survey().show(static_cast<SurveyModel::Shown>(i));
        refresh();
        m_view->setFocus();
    });
    const auto button = [&](const QString& text, void (SurveyStation::*act)()) {
        auto* made = new QPushButton(text, m_tools);
        made->setFont(face(Text::body));
        made->setFixedHeight(u(7.5));
        row->addWidget(made);
        connect(made, &QPushButton::clicked, this, act);
    };
    button(tr("Check n&umbers\u2026"), &SurveyStation::askMarks);
    button(tr("Wor&k list"), &SurveyStation::print);
    button(tr("Parts &list"), &SurveyStation::printParts);
}

void SurveyStation::refresh() {
    const bool piano = bench().piano() != nullptr;
    m_empty->setVisible(!piano);
    for (QWidget* each : {m_head, static_cast<QWidget*>(m_view), m_foot})
        each->setVisible(piano);
    m_tools->setEnabled(piano);
    if (!piano) return;
    const SurveyModel& model = m_view->survey();
    const bool empty = bench().record()->findings.empty();
    m_rows->setText(empty ? tr("Nothing found yet. Arrows choose part and note, a letter names the fault.")
                          : tr("%1 of %2 parts").arg(model.rowCount()).arg(model.partsFitted()));
    const auto asked = askBeforePlan(bench().record()->findings, *bench().piano(), bench().record()->marks);
    m_asked->setVisible(!asked.empty());
    if (!asked.empty()) {
        const int more = static_cast<int>(asked.size()) - 1;
        QString text = tr("<b>Asked before a plan:</b> %1")
                           .arg(words::surveyQuestion(asked.front(), *bench().piano()).toHtmlEscaped());
        if (more > 0) text += tr(" (%n more)", nullptr, more);
        m_asked->setText(text);
    }
    if (letOffRailFirst(bench().record()->findings, *bench().piano())) {
        m_asked->setVisible(true);
        m_asked->setText(QStringLiteral("<b>%1</b>").arg(words::letOffRailSentence().toHtmlEscaped()));
    }
    m_caution->setText(words::caution(bench().piano()->vertical() ? "tipping" : "force", *bench().piano()));
    takeFromTable();
    Q_EMIT wordsChanged();
}

About SurveyStation::place() const {
    const Part* part = m_view ? m_view->currentPart() : nullptr;
    return {{}, bench().note(), part ? std::string(part->key) : std::string(), {}};
}

void SurveyStation::takeFromTable() {
    const Part* part = m_view->currentPart();
    const Standing* standing = m_view->survey().standing();
    if (part) m_pages->memory().showPlace(place());
    if (part && standing) m_form->take(*part, m_view->chosenNotes(), standing->at(*part, bench().note()));
    Q_EMIT wordsChanged();
}

/// The table follows a part chosen in the form; the notes typed there stay what they are.
void SurveyStation::chooseInForm(const QString& part) {
    const QSignalBlocker typedStays(m_view);
    m_view->setCurrentPart(part.toStdString());
    Q_EMIT wordsChanged();
}

QString SurveyStation::context() const {
    if (!bench().piano()) return {};
    const auto& counts = m_view->survey().counts();
    const Job job = wholeJob(bench().record()->findings, *bench().piano(), jobTerms(bench().record()->preferences));
    QStringList said{counts.blocked > 0 ? tr("<b>%n note(s)</b> blocked until mended", nullptr, counts.blocked)
                                        : tr("nothing blocks")};
    said << tr("%n finding(s) to do", nullptr, counts.toDo) << tr("%n to watch", nullptr, counts.watch)
         << tr("%n mended", nullptr, counts.mended);
    if (job.minutesOpen > 0) said << tr("%1 of work").arg(words::hours(job.minutesOpen));
    return said.join(QStringLiteral(" &nbsp;\u00B7&nbsp; "));
}

QList<KeyHint> SurveyStation::hints() const {
    if (!bench().piano()) return {{QStringLiteral("Ctrl N"), tr("new piano")}};
    if (m_pages->orders().hasFocus())
        return {{tr("Space"), tr("whole set or only these")}, {QStringLiteral("H"), tr("ordered, in hand")},
                {QStringLiteral("S"), tr("sizes")},           {tr("Enter"), tr("spares")},
                {QStringLiteral("F6"), tr("next panel")},     {QStringLiteral("Ctrl PgDn"), tr("the whole job")}};
    if (m_pages->job().hasFocus())
        return {{tr("Enter"), tr("minutes usual with you")},
                {QStringLiteral("F6"), tr("next panel")},
                {QStringLiteral("Ctrl PgDn"), tr("symptoms")}};
    QList<KeyHint> keys{{QStringLiteral("Y"), tr("sound")}, {QStringLiteral("Shift Y"), tr("rest of this row sound")}};
    if (const Part* part = m_view->currentPart())
        for (const auto& [letter, fault] : faultLetters(*part)) {
            if (keys.size() > 6) break;
            keys << KeyHint{QString(letter), words::faultName(fault->key)};
        }
    keys << KeyHint{QStringLiteral("W"), tr("watch")} << KeyHint{QStringLiteral("M"), tr("mended")}
         << KeyHint{QStringLiteral("*"), tr("as last")} << KeyHint{QStringLiteral("F2"), tr("form")}
         << KeyHint{QStringLiteral("Ctrl Enter"), tr("add")};
    return keys;
}

QString SurveyStation::hintRemark() const {
    return tr("number every part");
}

StripMarks SurveyStation::strip() const {
    StripMarks marks;
    marks.legend = {tr("Notes named"), tr("bar: in the entry"), tr("notch: mend first"), tr("square: to do"),
                    tr("tick: mended")};
    marks.named = m_form->named();
    marks.plain = true;
    const SurveyModel& model = m_view->survey();
    for (int i = 1; bench().piano() && i <= bench().piano()->notes; ++i)
        if (const auto mark = model.keyMark(NoteNumber{i})) marks.keys.emplace(i, *mark);
    return marks;
}

void SurveyStation::arrive() {
    if (bench().piano())
        m_view->setFocus();
    else
        setFocus();
}

QList<QWidget*> SurveyStation::panels() {
    return {m_view, m_form, m_pages->front()};
}

void SurveyStation::refuse(const Refusal& refusal) {
    Q_EMIT notice(words::sentence(refusal));
}

void SurveyStation::preview(int sheetKind) {
    if (!bench().record()) return;
    const QString refused = previewSheet(this, sheetKind, *bench().record(), bench().passNumber(), nullptr);
    if (!refused.isEmpty()) Q_EMIT notice(refused);
}

void SurveyStation::print() {
    preview(static_cast<int>(SheetKind::survey));
}

void SurveyStation::printParts() {
    preview(static_cast<int>(SheetKind::parts));
}

void SurveyStation::askMarks() {
    const Part* part = m_view->currentPart();
    if (!part) return;
    const QString name = words::partOfActionName(part->key);
    const auto typed =
        Dialogs::now().ask(this, tr("Check numbers"),
                           tr("%1: the numbers as they lie, from the bass end (1-20, 22, 21, 23-88)").arg(name));
    if (!typed) return;
    const auto numbers = parseMarks(typed->toStdString());
    if (!numbers) return refuse(numbers.error());
    const MarkCheck check = checkMarks(*numbers, part->key, *bench().piano());
    Dialogs::now().say(this, tr("Check numbers"), tr("%1. %2").arg(name, words::markCheckSentence(check)));
}

Station* makeSurveyStation(Workbench& workbench) {
    return new SurveyStation(workbench);
}

} // namespace hammerline
