#include "ui/piano/fold.h"

#include "ui/widgets/look.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>

namespace hammerline {

namespace {

constexpr double kBarHigh = 8; // units

} // namespace

FoldBar::FoldBar(const QString& title, QWidget* parent) : QAbstractButton(parent) {
    setText(title);
    setAccessibleName(title);
    setCheckable(true);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void FoldBar::setSummary(const QString& summary) {
    m_summary = summary;
    setAccessibleDescription(summary);
    setToolTip(summary);
    update();
}

void FoldBar::setKey(const QString& key) {
    m_key = key;
}

QSize FoldBar::sizeHint() const {
    return {u(50), u(kBarHigh)};
}

QSize FoldBar::minimumSizeHint() const {
    return {u(30), u(kBarHigh)};
}

void FoldBar::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter) return click();
    QAbstractButton::keyPressEvent(event);
}

void FoldBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), ink(hasFocus() ? look.sel : look.bench));
    painter.fillRect(QRect(0, height() - 1, width(), 1), ink(look.line));
    const double middle = height() / 2.0;
    QPainterPath arrow(QPointF(u(3), middle - units(1)));
    if (isChecked()) {
        arrow = QPainterPath(QPointF(u(3), middle - units(0.6)));
        arrow.lineTo(u(5), middle - units(0.6));
        arrow.lineTo(u(4), middle + units(0.7));
    } else {
        arrow.lineTo(u(4.5), middle);
        arrow.lineTo(u(3), middle + units(1));
    }
    painter.fillPath(arrow, ink(look.ink));
    QRect words = rect().adjusted(u(7), 0, -u(3), 0);
    painter.setFont(face(Text::body, true));
    painter.setPen(ink(look.ink));
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, text());
    words.setLeft(words.left() + painter.fontMetrics().horizontalAdvance(text()) + u(3));
    painter.setFont(face(Text::label));
    painter.setPen(ink(look.ink2));
    if (!m_key.isEmpty()) {
        const QRect cap(words.right() - u(5), height() / 2 - u(2.5), u(5), u(5));
        painter.setBrush(ink(look.paper));
        painter.drawRoundedRect(QRectF(cap).adjusted(0.5, 0.5, -0.5, -0.5), u(0.75), u(0.75));
        painter.drawText(cap, Qt::AlignCenter, m_key);
        words.setRight(cap.left() - u(2));
    }
    painter.drawText(words, Qt::AlignRight | Qt::AlignVCenter, elided(m_summary, painter.font(), words.width()));
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(ink(look.ring), 2));
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
}

} // namespace hammerline
