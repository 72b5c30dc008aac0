#include "ui/widgets/hint_bar.h"

#include "ui/widgets/marks.h"

namespace hammerline {

double paintKeyCap(QPainter& painter, double left, double middle, const QString& key, const Look& look) {
    const QFont font = face(Text::tiny, true);
    const QFontMetricsF metrics(font);
    const double width = std::max(units(4), metrics.horizontalAdvance(key) + units(2.5)), height = units(4.75);
    const QRectF cap(left + 0.5, std::round(middle - height / 2) + 0.5, std::round(width), std::round(height));
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(QColor::fromRgb(look.edge), 1));
    painter.setBrush(QColor::fromRgb(look.paper));
    painter.drawRoundedRect(cap, units(0.75), units(0.75));
    painter.setPen(QColor::fromRgb(look.ink));
    painter.setFont(font);
    painter.drawText(cap, Qt::AlignCenter, key);
    painter.restore();
    return cap.right() + 0.5;
}

HintBar::HintBar(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Keys that work now"));
}

void HintBar::setHints(QList<KeyHint> hints, const QString& remark) {
    if (hints == m_hints && remark == m_remark) return; // asked at every reading
    m_hints = std::move(hints);
    m_remark = remark;
    QStringList said;
    for (const KeyHint& hint : m_hints)
        said << hint.keys + QStringLiteral(": ") + hint.does;
    setAccessibleDescription(said.join(QStringLiteral(", ")));
    update();
}

QSize HintBar::sizeHint() const {
    return {u(200), u(6.5)};
}

void HintBar::paintEvent(QPaintEvent*) {
    const Look& look = lookOf(*this);
    QPainter painter(this);
    painter.fillRect(rect(), QColor::fromRgb(look.head));
    painter.fillRect(QRect(0, 0, width(), 1), QColor::fromRgb(look.line));
    const double middle = height() / 2.0 + 0.5;
    const QFont font = face(Text::label);
    const QFontMetricsF metrics(font);
    const double room = width() - units(8) - (m_remark.isEmpty() ? 0 : metrics.horizontalAdvance(m_remark));
    const double base = middle + metrics.capHeight() / 2;
    double x = units(4);
    for (const KeyHint& hint : m_hints) {
        double needed = metrics.horizontalAdvance(hint.does) + units(5);
        const auto keys = hint.keys.split(u' ', Qt::SkipEmptyParts);
        for (const QString& key : keys)
            needed += std::max(units(4), QFontMetricsF(face(Text::tiny, true)).horizontalAdvance(key) + units(2.5)) +
                      units(1);
        if (x + needed > room) break;
        for (const QString& key : keys)
            x = paintKeyCap(painter, x, middle, key, look) + units(1);
        painter.setFont(font);
        painter.setPen(QColor::fromRgb(look.ink2));
        painter.drawText(QPointF(x + units(0.25), base), hint.does);
        x += metrics.horizontalAdvance(hint.does) + units(4);
    }
    painter.setFont(font);
    painter.setPen(QColor::fromRgb(look.ink2));
    painter.drawText(QPointF(width() - units(4) - metrics.horizontalAdvance(m_remark), base), m_remark);
}

} // namespace hammerline
