#include "ui/questions/question_row.h"

#include "core/survey/filing.h"
#include "ui/widgets/look.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

namespace hammerline {

namespace {

constexpr double kMarkWide = 8, kButtonHigh = 7; // units

} // namespace

QuestionRow::QuestionRow(Workbench& bench, std::string_view question, QWidget* parent)
    : QWidget(parent)
    , m_bench(bench)
    , m_question(question)
    , m_form(formOf(question))
    , m_text(new QLabel(this))
    , m_below(new QLabel(this))
    , m_whereLabel(new QLabel(this))
    , m_where(new QWidget(this))
    , m_fault(new QComboBox(m_where))
    , m_notes(new QLineEdit(m_where)) {
    setFocusPolicy(Qt::StrongFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(u(kMarkWide), u(2), u(3), u(2));
    column->setSpacing(u(1));
    m_text->setWordWrap(true);
    m_text->setText(words::askFirstSentence(question, *bench.piano()));
    column->addWidget(m_text);

    const bool look = m_form.kind == QuestionForm::Kind::look, told = m_form.kind == QuestionForm::Kind::told;
    auto* answers = new QHBoxLayout;
    answers->setSpacing(u(2));
    if (!told) {
        m_good = addButton(look ? tr("Yes") : tr("In order"), QStringLiteral("Y"));
        m_bad = addButton(look ? tr("No") : tr("Not in order"), QStringLiteral("N"));
        m_later = addButton(tr("Not yet"), QStringLiteral("L"));
        connect(m_good, &QPushButton::clicked, this, [this] { choose(Answer::good); });
        connect(m_bad, &QPushButton::clicked, this, [this] { choose(Answer::bad); });
        connect(m_later, &QPushButton::clicked, this, [this] { Q_EMIT step(1); });
        for (QPushButton* each : {m_good, m_bad, m_later})
            answers->addWidget(each);
    }
    answers->addStretch(1);
    column->addLayout(answers);

    auto* where = new QHBoxLayout(m_where);
    where->setContentsMargins(0, 0, 0, 0);
    where->setSpacing(u(2));
    m_fault->setAccessibleName(tr("What is wrong"));
    m_notes->setAccessibleName(tr("Notes"));
    m_notes->installEventFilter(this);
    m_fault->installEventFilter(this);
    where->addWidget(m_fault);
    where->addWidget(m_whereLabel);
    where->addWidget(m_notes, 1);
    column->addWidget(m_where);
    m_where->hide();
    m_below->setWordWrap(true);
    m_below->setFont(face(Text::label));
    column->addWidget(m_below);
    sayBelow({}, false);
    setAccessibleName(m_text->text());
}

QPushButton* QuestionRow::addButton(const QString& text, const QString& key) {
    auto* button = new QPushButton(QStringLiteral("%1   %2").arg(text, key), this);
    button->setAccessibleName(text);
    button->setMinimumHeight(u(kButtonHigh));
    button->setCheckable(true);
    button->setFocusPolicy(Qt::NoFocus); // the row has the hand, and its letters
    return button;
}

/// What is tried is in order where it was tried alone; a part of many notes is wrong at some of them.
bool QuestionRow::wantsNotes(Answer answer) const {
    const bool tried = m_form.kind == QuestionForm::Kind::tried;
    return answer == Answer::good ? tried : m_form.kind != QuestionForm::Kind::look;
}

void QuestionRow::choose(Answer answer) {
    const bool good = answer == Answer::good;
    if (m_form.kind == QuestionForm::Kind::told) return;
    if (wantsNotes(answer)) return askWhere(answer);
    if (m_form.kind == QuestionForm::Kind::look)
        return settle(answerLook(m_bench, m_question, good), good ? tr("yes") : tr("no"));
    settle(answerSound(m_bench, *m_form.part, {}), tr("in order"));
}

void QuestionRow::askWhere(Answer answer) {
    const Part& part = *m_form.part;
    const bool good = answer == Answer::good, whole = part.unit == PartUnit::piano;
    m_asked = answer;
    m_fault->clear();
    for (const Fault& fault : part.faults)
        if (filingPass(fault.key) == 0) m_fault->addItem(words::faultName(fault.key), words::utf8(fault.key));
    if (!m_form.fault.empty()) m_fault->setCurrentIndex(m_fault->findData(words::utf8(m_form.fault)));
    m_fault->setVisible(!good);
    m_whereLabel->setText(good ? tr("Tried, and in order at notes") : tr("at notes"));
    m_whereLabel->setVisible(!whole);
    m_notes->setVisible(!whole);
    m_notes->clear();
    const QString suggested = words::surveyAnswer(m_question, *m_bench.piano()).section(QLatin1Char(' '), 0, 0);
    m_notes->setPlaceholderText(good ? tr("such as %1").arg(suggested) : tr("such as 12, 40-43; or all"));
    m_good->setChecked(good);
    m_bad->setChecked(!good);
    m_where->show();
    sayBelow(tr("Enter keeps it, Esc leaves it open. Force nothing."), false);
    (whole ? static_cast<QWidget*>(m_fault) : m_notes)->setFocus(Qt::OtherFocusReason);
}

void QuestionRow::closeWhere() {
    m_asked = Answer::none;
    m_where->hide();
    for (QPushButton* each : {m_good, m_bad})
        if (each) each->setChecked(false);
    sayBelow(m_answer, false);
    setFocus(Qt::OtherFocusReason);
}

void QuestionRow::keepWhere() {
    const bool good = m_asked == Answer::good, whole = m_form.part->unit == PartUnit::piano;
    const QString typed = m_notes->text().trimmed();
    if (!whole && typed.isEmpty()) return sayBelow(tr("Type the notes, as numbers or names; \"all\" for all."), true);
    if (isBareLetter(typed))
        return sayBelow(tr("A letter alone is a key of every octave: type its number, or its name as A4."), true);
    const std::string notes = whole ? std::string() : typed.toStdString();
    const std::string fault = m_fault->currentData().toString().toStdString();
    const QString where = whole ? QString() : QStringLiteral(": ") + typed;
    settle(good ? answerSound(m_bench, *m_form.part, notes) : answerFaulty(m_bench, *m_form.part, fault, notes),
           (good ? tr("in order") : m_fault->currentText()) + where);
}

/// Refused: what was typed stays, and why stands below it.
void QuestionRow::settle(const Outcome<void>& kept, const QString& answer) {
    if (!kept) return sayBelow(words::sentence(kept.error()), true);
    m_answer = tr("Answered: %1. Ctrl+Z takes it back.").arg(answer);
    closeWhere();
    if (!m_open) Q_EMIT step(1); // where it was tried at too few notes yet, the hand stays
}

void QuestionRow::setOpen(bool open) {
    const bool again = open && !m_open;
    m_open = open;
    if (again) m_answer.clear();
    if (!open && m_answer.isEmpty()) m_answer = tr("Answered.");
    if (m_asked == Answer::none) sayBelow(m_answer, false);
    setAccessibleDescription(spoken());
    update();
}

QString QuestionRow::spoken() const {
    if (!m_open) return m_answer;
    if (m_form.kind == QuestionForm::Kind::told) return tr("to do before the plan");
    return tr("not answered yet; Y, N or L");
}

void QuestionRow::sayBelow(const QString& text, bool refused) {
    m_below->setText(refused ? QStringLiteral("▲ %1").arg(text) : text);
    m_below->setForegroundRole(refused ? QPalette::BrightText : QPalette::PlaceholderText);
    m_below->setVisible(!text.isEmpty());
}

void QuestionRow::keyPressEvent(QKeyEvent* event) {
    if (event->modifiers() != Qt::NoModifier) return QWidget::keyPressEvent(event);
    switch (event->key()) {
    case Qt::Key_Y:
        return choose(Answer::good);
    case Qt::Key_N:
        return choose(Answer::bad);
    case Qt::Key_L:
    case Qt::Key_Down:
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return Q_EMIT step(1);
    case Qt::Key_Up:
        return Q_EMIT step(-1);
    default:
        return QWidget::keyPressEvent(event);
    }
}

bool QuestionRow::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const auto* pressed = static_cast<QKeyEvent*>(event);
    const bool enter = pressed->key() == Qt::Key_Return || pressed->key() == Qt::Key_Enter;
    if (enter) return keepWhere(), true;
    if (pressed->key() == Qt::Key_Escape) return closeWhere(), true;
    return QWidget::eventFilter(watched, event);
}

void QuestionRow::focusInEvent(QFocusEvent*) {
    update();
}

void QuestionRow::focusOutEvent(QFocusEvent*) {
    update();
}

void QuestionRow::mousePressEvent(QMouseEvent*) {
    setFocus(Qt::MouseFocusReason);
}

/// A ring while it is open, filled with a tick once it is answered; the row at hand stands out.
void QuestionRow::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = lookOf(*this);
    if (hasFocus()) {
        painter.fillRect(rect(), ink(look.sel));
        painter.setPen(QPen(ink(look.ring), 2));
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
    painter.fillRect(QRect(0, height() - 1, width(), 1), ink(look.line));
    const QRectF mark(u(2.5), u(2), u(3.5), u(3.5));
    painter.setPen(QPen(ink(look.ink), 1.5));
    painter.setBrush(m_open ? QBrush(Qt::NoBrush) : QBrush(ink(look.ink)));
    painter.drawEllipse(mark);
    if (m_open) return;
    painter.setPen(QPen(ink(look.paper), 2));
    painter.drawPolyline(QPolygonF{{QPointF(mark.left() + u(0.9), mark.center().y()),
                                    QPointF(mark.center().x() - u(0.2), mark.bottom() - u(1)),
                                    QPointF(mark.right() - u(0.8), mark.top() + u(1))}});
}

} // namespace hammerline
