#include "ui/stations/step_page.h"

#include "ui/stations/work_rows.h"
#include "ui/widgets/doing/doing_drawing.h"
#include "ui/widgets/key_button.h"
#include "ui/words/step_texts.h"
#include "ui/words/work_now.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QTextBrowser>
#include <QTextDocument>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>
#include <memory>

namespace hammerline {

StepPage::StepPage(Workbench& bench, QWidget* parent)
    : QWidget(parent)
    , m_bench(bench)
    , m_text(new QTextBrowser(this))
    , m_done(makeText(this))
    , m_field(new QLabel(tr("notes done now"), this))
    , m_notes(new QLineEdit(this))
    , m_foot(new QWidget(this))
    , m_drawing(new DoingDrawing(this))
    , m_all(new KeyButton(tr("All done"), tr("Space"), m_foot))
    , m_not(new KeyButton(tr("Not on this piano"), QStringLiteral("N"), m_foot))
    , m_go(new KeyButton(tr("Go and do it"), tr("Enter"), m_foot)) {
    m_text->setAccessibleName(tr("How the step is done"));
    m_text->setFrameShape(QFrame::NoFrame);
    m_text->document()->setDocumentMargin(u(3)); // in line with the panel's head
    m_text->setFont(face(Text::body));
    m_notes->setAccessibleName(tr("Notes done now"));
    m_notes->setPlaceholderText(QStringLiteral("31, 34-36"));
    m_notes->setMinimumHeight(u(7.5));
    m_notes->setMaximumWidth(u(50));
    m_notes->installEventFilter(this);
    m_field->setBuddy(m_notes);
    for (KeyButton* each : {m_all, m_not, m_go})
        each->setFocusPolicy(Qt::TabFocus);
    connect(m_all, &KeyButton::clicked, this, &StepPage::allAsked);
    connect(m_not, &KeyButton::clicked, this, &StepPage::notHereAsked);
    connect(m_go, &KeyButton::clicked, this, &StepPage::goAsked);

    m_buttons = new QGridLayout;
    m_buttons->setContentsMargins(u(3), 0, u(3), 0);
    m_buttons->setSpacing(u(3));
    m_buttons->setColumnStretch(3, 1);
    layButtons();
    auto* notes = new QHBoxLayout;
    notes->setContentsMargins(u(3), 0, u(3), 0);
    notes->addWidget(m_field);
    notes->addWidget(m_notes);
    notes->addStretch(1);
    auto* foot = new QVBoxLayout(m_foot);
    foot->setContentsMargins(0, u(1), 0, u(2));
    foot->addWidget(m_done);
    foot->addLayout(notes);
    foot->addLayout(m_buttons);
    m_body = new QWidget;
    m_body->installEventFilter(this);
    auto* column = new QVBoxLayout(m_body);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_text, 1);
    column->addWidget(m_drawing);
    column->addWidget(m_foot);
    m_panel = new Panel({}, m_body, this);
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(m_panel);
}

void StepPage::showStep(const StepNow* now, const QString& instead) {
    m_has = now != nullptr;
    m_foot->setVisible(m_has);
    if (!m_has) {
        m_panel->setTitle({});
        m_text->setPlainText(instead);
        m_drawing->hide();
        return;
    }
    const bool another = m_now.step != now->step;
    m_now = *now;
    const Piano& piano = *m_bench.piano();
    const QString time = now->minutes > 0 ? timeText(now->minutes) : QString();
    QStringList facts{words::workAccessName(accessFor(*now->step, piano, now->notes.size()))};
    if (!time.isEmpty()) facts << tr("%1 left").arg(time);
    m_panel->setTitle(words::stepName(now->step->id), facts.join(QStringLiteral(" · ")));
    sayText();
    sayDone();
    if (another) m_notes->clear();
    layDrawing();
}

/// The drawing stands where the text leaves it room enough to be seen; the text is never cut for it.
void StepPage::layDrawing() {
    constexpr double kLeast = 45, kLeastWide = 36, kMost = 63, kBeside = 158; // units
    if (!m_has) return;
    const bool drawn = m_drawing->setSubject(m_now.step->drawing, kindLetters(*m_bench.piano()));
    const std::unique_ptr<QTextDocument> text(m_text->document()->clone());
    text->setTextWidth(m_body->width());
    const int foot = m_foot->layout()->sizeHint().height();
    const int room = m_body->height() - foot - static_cast<int>(std::ceil(text->size().height()));
    m_drawing->setFixedHeight(std::clamp(room, 0, u(kMost)));
    m_drawing->setVisible(drawn && room >= u(width() >= u(kBeside) ? kLeastWide : kLeast));
}

void StepPage::sayText() {
    if (m_has) m_text->setHtml(workStepHtml(m_now, *m_bench.piano(), m_wide));
}

void StepPage::sayDone() {
    const auto all = m_now.notes.size() + m_now.doneNotes.size();
    const bool settled = m_now.state == StepState::done || m_now.state == StepState::notHere;
    const bool ofNotes = all > 0;
    const QString state = words::stepStateName(m_now.state);
    m_done->setText(!ofNotes || m_now.doneNotes.empty()
                        ? QString()
                        : tr("<b>%1</b> of %2 done: %3")
                              .arg(m_now.doneNotes.size())
                              .arg(all)
                              .arg(QString::fromStdString(writeNotes(m_now.doneNotes))));
    m_done->setVisible(!m_done->text().isEmpty());
    m_field->setVisible(takesNotes());
    m_notes->setVisible(takesNotes());
    m_all->setText(settled                           ? tr("Not done after all")
                   : ofNotes && !m_now.notes.empty() ? tr("All %1 done").arg(m_now.notes.size())
                                                     : tr("Done"));
    m_not->setVisible(!settled);
    const bool elsewhere =
        m_now.asks == StepAsks::read || m_now.asks == StepAsks::readAgain || m_now.asks == StepAsks::mend;
    m_go->setVisible(elsewhere && !settled);
}

bool StepPage::beginNotes(const QString& first) {
    if (!m_has || !takesNotes()) return false;
    m_notes->setText(first);
    m_notes->setFocus();
    m_notes->end(false);
    return true;
}

/// Whether some of its notes can be done and others not yet.
bool StepPage::takesNotes() const {
    const bool settled = m_now.state == StepState::done || m_now.state == StepState::notHere;
    return !settled && (!m_now.notes.empty() || m_now.step->per != PartUnit::piano);
}

void StepPage::clearNotes() {
    m_notes->clear();
}

bool StepPage::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_body && event->type() == QEvent::Resize) layDrawing();
    if (watched != m_notes || event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT notesTyped(m_notes->text().trimmed());
        return true;
    case Qt::Key_Escape:
        m_notes->clear();
        Q_EMIT left();
        return true;
    default:
        return false;
    }
}

void StepPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    constexpr double kTwoColumns = 150;
    if (const bool wide = width() >= u(kTwoColumns); wide != m_wide) {
        m_wide = wide;
        layButtons();
        sayText();
    }
}

/// One under the other where they have no room beside each other.
void StepPage::layButtons() {
    int at = 0;
    for (KeyButton* each : {m_go, m_all, m_not}) {
        m_buttons->removeWidget(each);
        m_buttons->addWidget(each, m_wide ? 0 : at, m_wide ? at : 0, Qt::AlignLeft);
        ++at;
    }
}

} // namespace hammerline
