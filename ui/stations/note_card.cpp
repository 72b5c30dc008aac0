#include "ui/stations/note_card.h"

#include "ui/stations/note_card_rows.h"
#include "ui/stations/station_words.h"
#include "ui/widgets/marks.h"
#include "ui/words/words.h"

#include <QEvent>
#include <QPainter>
#include <QTextEdit>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>

#include <utility>

namespace hammerline {

namespace {
constexpr double kHead = 18.5, kCardRow = 5.75, kCardWide = 76; // units
}

NoteCard::NoteCard(Workbench& bench, QWidget* parent)
    : QWidget(parent)
    , m_bench(bench)
    , m_rows(new RowTable(tr("Readings of this note"),
                          {{{}, 0}, {{}, 15, Qt::AlignRight}, {{}, 15.5}, {{}, 16, Qt::AlignRight}}, kCardRow, this))
    , m_text(new QTextEdit(this))
    , m_howTo(new QToolButton(this)) {
    setObjectName(QStringLiteral("noteCard"));
    setAccessibleName(tr("Note card"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(1, u(kHead), 0, 0);
    column->setSpacing(0);
    m_rows->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    column->addWidget(m_rows);
    m_text->setReadOnly(true);
    m_text->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    m_text->setTabChangesFocus(true);
    m_text->setUndoRedoEnabled(false);
    m_text->setFrameShape(QFrame::NoFrame);
    m_text->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_text->setAccessibleName(tr("What is known of this note"));
    column->addWidget(m_text, 1);
    m_howTo->setText(tr("How to measure"));
    m_howTo->setToolTip(tr("How the current dimension is measured (Shift+F1)"));
    m_howTo->setAccessibleName(m_howTo->text());
    connect(m_howTo, &QToolButton::clicked, this, &NoteCard::howToAsked);
    connect(m_rows, &RowTable::moved, this,
            [this](int key) { m_bench.setDimension(DimensionId{static_cast<std::uint8_t>(key)}); });
    for (const auto signal :
         {&Workbench::noteChanged, &Workbench::dimensionChanged, &Workbench::recordChanged, &Workbench::planChanged})
        connect(&m_bench, signal, this, &NoteCard::soon);
    refresh();
}

QSize NoteCard::sizeHint() const {
    return {u(kCardWide), u(120)};
}

QString NoteCard::text() {
    settle();
    return m_html;
}

RowTable& NoteCard::rows() {
    settle();
    return *m_rows;
}

/// Once for all that one key changes, and after the cell itself is painted.
void NoteCard::soon() {
    if (std::exchange(m_due, true)) return;
    QTimer::singleShot(0, this, &NoteCard::settle);
}

void NoteCard::settle() {
    if (m_due) refresh();
}

void NoteCard::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refresh();
}

void NoteCard::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) refresh();
}

/// Only while it is seen: at a fast typist's hand the card must not cost a key.
void NoteCard::refresh() {
    m_due = false;
    if (!isVisible()) return;
    if (!m_bench.record()) {
        m_rows->setRows({});
        say(tr("No piano yet."));
        m_rows->setFixedHeight(0);
        return;
    }
    const QSignalBlocker quiet(m_rows);
    auto rows = noteCardRows(m_bench, m_bench.note());
    m_rows->setFixedHeight(static_cast<int>(rows.size()) * u(kCardRow) + 1);
    m_rows->setRows(std::move(rows));
    m_rows->setCurrentKey(m_bench.dimension().row);
    m_text->setFont(face(Text::body));
    m_text->document()->setDocumentMargin(u(3));
    say(noteCardRelation(m_bench, m_bench.note()) + noteCardTouch(m_bench, m_bench.note()) +
        noteCardHistory(m_bench, m_bench.cell()) + noteCardFindings(m_bench, m_bench.note()) +
        noteCardLeft(m_bench, m_bench.note()) + noteCardProgress(m_bench));
    layOut();
    update();
}

/// What is selected in it stays where the text does.
void NoteCard::say(const QString& html) {
    if (html == m_html) return;
    m_html = html;
    m_text->setHtml(html);
}

void NoteCard::layOut() {
    m_howTo->setFont(face(Text::label));
    const QSize size = m_howTo->sizeHint();
    m_howTo->setGeometry(width() - size.width() - u(2), u(2), size.width(), u(6));
}

void NoteCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), QColor::fromRgb(look.paper));
    painter.fillRect(QRect(0, 0, 1, height()), QColor::fromRgb(look.line));
    painter.fillRect(QRect(0, u(kHead) - 1, width(), 1), QColor::fromRgb(look.line));
    if (!m_bench.piano()) return;
    const Piano& piano = *m_bench.piano();
    const NoteNumber note = m_bench.note();
    const auto sections = sectionsOf(piano);
    const std::size_t section = sectionIndexOf(note, piano);
    const QString pitch = words::pitch(note, piano);
    painter.setFont(face(Text::pitch, true));
    painter.setPen(QColor::fromRgb(look.ink));
    const double wide = paintNote(painter, {units(3.5), units(13.5)}, pitch);
    const double x = units(3.5) + wide + units(4);
    painter.setFont(face(Text::body));
    painter.drawText(
        QPointF(x, units(7)),
        (colourOf(note, piano) == KeyColour::sharp ? tr("note %1, sharp") : tr("note %1, natural")).arg(note.value));
    painter.setPen(QColor::fromRgb(look.ink2));
    painter.drawText(QPointF(x, units(12.5)), tr("%1, %2 from its break")
                                                  .arg(words::sectionName(sections[section], section, sections.size()))
                                                  .arg(note.value - sections[section].range.first + 1));
}

} // namespace hammerline
