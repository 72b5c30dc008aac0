#include "ui/stations/bench_field.h"

#include <QKeyEvent>

namespace hammerline {

BenchField::BenchField(QWidget* parent) : QLineEdit(parent) {
    setFrame(false);
    setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    setMaxLength(64);
    setObjectName(QStringLiteral("benchField"));
    setContextMenuPolicy(Qt::NoContextMenu);
    setAttribute(Qt::WA_MacShowFocusRect, false);
}

void BenchField::keyPressEvent(QKeyEvent* event) {
    if (m_keys && m_keys(event)) return event->accept();
    QLineEdit::keyPressEvent(event);
}

bool BenchField::event(QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Tab || key->key() == Qt::Key_Backtab) {
            keyPressEvent(key); // the dimension beside, never another panel
            return true;
        }
    }
    if (event->type() == QEvent::ShortcutOverride) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo) || key->key() == Qt::Key_Escape ||
            key->key() == Qt::Key_F9) {
            event->accept();
            return true;
        }
    }
    return QLineEdit::event(event);
}

} // namespace hammerline
