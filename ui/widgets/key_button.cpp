#include "ui/widgets/key_button.h"

#include "ui/widgets/hint_bar.h"
#include "ui/widgets/marks.h"

namespace hammerline {

KeyButton::KeyButton(const QString& text, const QString& key, QWidget* parent) : QAbstractButton(parent), m_key(key) {
    setText(text);
    setAccessibleName(text);
    setAccessibleDescription(key);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

QSize KeyButton::sizeHint() const {
    const double wide = QFontMetricsF(face(Text::body, true)).horizontalAdvance(text()) +
                        QFontMetricsF(face(Text::tiny, true)).horizontalAdvance(m_key);
    return {qRound(wide) + u(11.5), u(7.5)};
}

void KeyButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = lookOf(*this);
    painter.setPen(QPen(QColor::fromRgb(look.edge), 1));
    painter.setBrush(QColor::fromRgb(isDown() ? look.head : look.paper));
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), units(1), units(1));
    painter.setFont(face(Text::body, true));
    painter.setPen(QColor::fromRgb(isEnabled() ? look.ink : look.ink3));
    const QFontMetricsF metrics(painter.font());
    painter.drawText(QPointF(units(3), height() / 2.0 + metrics.capHeight() / 2), text());
    paintKeyCap(painter, units(3) + metrics.horizontalAdvance(text()) + units(2), height() / 2.0, m_key, look);
    if (hasFocus()) paintRing(painter, QRectF(rect()), look, true);
}

} // namespace hammerline
