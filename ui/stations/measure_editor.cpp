#include "ui/stations/measure_editor.h"

#include "ui/widgets/marks.h"
#include "ui/widgets/spoken.h"

#include <QKeyEvent>
#include <QPaintEvent>

namespace hammerline {

ReadingEditor::ReadingEditor(const Workbench& bench, Cell cell, QWidget* viewport)
    : QLineEdit(viewport), m_bench(bench), m_cell(cell), m_plate(new Plate(viewport)) {
    setFrame(false);
    setFont(face(Text::digits));
    setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    setTextMargins(u(1), 0, u(2), 0);
    setMaxLength(64);
    setObjectName(QStringLiteral("readingEditor"));
    connect(this, &QLineEdit::textChanged, this, &ReadingEditor::understandNow);
}

ReadingEditor::~ReadingEditor() {
    if (m_plate) {
        m_plate->hide();
        m_plate->deleteLater();
    }
}

void ReadingEditor::setInitial(const QString& typed) {
    m_initial = typed;
    setText(typed);
    selectAll();
}

void ReadingEditor::setRepeat(bool on) {
    m_repeat = on;
    understandNow();
}

void ReadingEditor::understandNow() {
    m_asking = false;
    m_meaning = understand(m_bench, text(), m_cell, m_repeat);
    using Meaning = Understanding::Kind;
    const bool sound = m_meaning.kind == Meaning::sound;
    sayAt(*this, sound ? (m_meaning.headline + QStringLiteral(", ") + m_meaning.more) : QString());
    if (sound) {
        m_plate->say(Plate::Kind::echo, QStringLiteral("= ") + m_meaning.headline, m_meaning.more);
        m_plate->standBy(geometry(), parentWidget()->rect());
    } else {
        m_plate->hide(); // half-typed text is not spoken of until a person wants to go on
    }
    update();
}

void ReadingEditor::ask() {
    using Meaning = Understanding::Kind;
    if (m_meaning.kind == Meaning::refused) {
        m_plate->say(Plate::Kind::refusal, m_meaning.headline, m_meaning.more);
    } else if (m_meaning.kind == Meaning::question) {
        QStringList answers;
        if (!m_meaning.suggestion.isEmpty()) answers << tr("Enter: %1").arg(m_meaning.suggestion);
        if (m_meaning.reading) answers << tr("F9: as typed, %1").arg(text().trimmed());
        answers << tr("or type it again");
        m_plate->say(Plate::Kind::question, m_meaning.headline, answers.join(QStringLiteral("   ")));
    } else {
        return;
    }
    m_asking = true;
    m_plate->standBy(geometry(), parentWidget()->rect());
    setFocus();
    sayAt(*this, m_plate->spoken());
    selectAll(); // what is typed now takes the place of what was refused
    update();
}

bool ReadingEditor::answer(QKeyEvent* event) {
    if (!m_asking || m_meaning.kind != Understanding::Kind::question) return false;
    if (event->key() == kTakeAsTyped && m_meaning.reading) {
        Q_EMIT taken();
        return true;
    }
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && !m_meaning.suggestion.isEmpty()) {
        setText(m_meaning.suggestion);
        if (m_meaning.kind == Understanding::Kind::sound) Q_EMIT finished(Qt::Key_Enter, Qt::NoModifier);
        return true;
    }
    return false;
}

void ReadingEditor::keyPressEvent(QKeyEvent* event) {
    if (answer(event)) return;
    if (event->matches(QKeySequence::Undo)) {
        if (isUndoAvailable() && changed())
            undo();
        else
            Q_EMIT undoAsked();
        return;
    }
    if (event->matches(QKeySequence::Redo) ||
        (event->key() == Qt::Key_Y && event->modifiers() == Qt::ControlModifier)) {
        if (isRedoAvailable())
            redo();
        else
            Q_EMIT redoAsked();
        return;
    }
    switch (event->key()) {
    case Qt::Key_Escape:
        Q_EMIT abandoned();
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
    case Qt::Key_Tab:
    case Qt::Key_Backtab:
        Q_EMIT finished(static_cast<Qt::Key>(event->key()), event->modifiers());
        return;
    case Qt::Key_Right:
        // typed afresh: the arrow goes on, as in any grid; while correcting (F2) it moves in the text
        if (m_initial.isEmpty() && !m_asking && cursorPosition() == text().size()) {
            Q_EMIT finished(Qt::Key_Right, event->modifiers());
            return;
        }
        break;
    case Qt::Key_Left:
        if (m_initial.isEmpty() && !m_asking && cursorPosition() == 0) {
            Q_EMIT finished(Qt::Key_Left, event->modifiers());
            return;
        }
        break;
    default:
        break;
    }
    QLineEdit::keyPressEvent(event);
}

bool ReadingEditor::event(QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Tab || key->key() == Qt::Key_Backtab) {
            keyPressEvent(key);
            return true;
        }
    }
    if (event->type() == QEvent::ShortcutOverride) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo) || key->key() == Qt::Key_Escape ||
            key->key() == kTakeAsTyped) {
            event->accept();
            return true;
        }
    }
    return QLineEdit::event(event);
}

void ReadingEditor::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) Q_EMIT left();
}

void ReadingEditor::placeAt(const QRect& cell) {
    m_cellRect = cell;
    // 3 px larger than the cell on every side, for ring and halo; wider where the text needs it
    const int needed = QFontMetrics(font()).horizontalAdvance(text()) + u(6);
    QRect box = cell.adjusted(-3, -3, 3, 3);
    if (needed > box.width()) box.setLeft(std::max(0, box.right() - needed));
    setGeometry(box);
    if (m_plate && m_plate->isVisible()) m_plate->standBy(geometry(), parentWidget()->rect());
}

void ReadingEditor::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    const Look& look = lookOf(*this);
    QPainter painter(this);
    const bool refused = m_asking && m_meaning.kind == Understanding::Kind::refused;
    painter.setPen(QPen(QColor::fromRgb(refused ? look.fault : look.ring), 3));
    painter.drawRect(QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5));
}

} // namespace hammerline
