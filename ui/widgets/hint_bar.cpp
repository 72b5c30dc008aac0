#include "ui/widgets/hint_bar.h"

#include "ui/widgets/marks.h"

#include <QEvent>

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
    if (hints == m_now.hints && remark == m_now.remark) return; // asked at every reading
    std::swap(m_now, m_before);
    if (hints != m_now.hints || remark != m_now.remark) m_now = {std::move(hints), remark, {}};
    QStringList said;
    for (const KeyHint& hint : m_now.hints)
        said << hint.keys + QStringLiteral(": ") + hint.does;
    setAccessibleDescription(said.join(QStringLiteral(", ")));
    update();
}

QSize HintBar::sizeHint() const {
    return {u(200), u(6.5)};
}

void HintBar::forgetPictures() {
    m_now.picture = m_before.picture = {};
}

void HintBar::resizeEvent(QResizeEvent*) {
    forgetPictures();
}

void HintBar::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) forgetPictures();
}

void HintBar::paintEvent(QPaintEvent*) {
    const double ratio = devicePixelRatioF();
    if (m_now.picture.isNull() || m_now.picture.devicePixelRatio() != ratio) {
        m_now.picture = QPixmap(size() * ratio);
        m_now.picture.setDevicePixelRatio(ratio);
        QPainter painter(&m_now.picture);
        paintLine(painter);
    }
    QPainter(this).drawPixmap(0, 0, m_now.picture);
}

void HintBar::paintLine(QPainter& painter) const {
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), QColor::fromRgb(look.head));
    painter.fillRect(QRect(0, 0, width(), 1), QColor::fromRgb(look.line));
    const double middle = height() / 2.0 + 0.5;
    const QFont font = face(Text::label);
    const QFontMetricsF metrics(font);
    const double room = width() - units(8) - (m_now.remark.isEmpty() ? 0 : metrics.horizontalAdvance(m_now.remark));
    const double base = middle + metrics.capHeight() / 2;
    double x = units(4);
    for (const KeyHint& hint : m_now.hints) {
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
    painter.drawText(QPointF(width() - units(4) - metrics.horizontalAdvance(m_now.remark), base), m_now.remark);
}

} // namespace hammerline
