#include "ui/widgets/drawn_head.h"

#include <QFontMetricsF>

namespace hammerline {

namespace {

constexpr double kHeadHigh = 9, kHeadBase = 6, kHeadGap = 4, kRemarkGap = 1.5; // units
constexpr int kWrapped = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;

bool besideTitle(const DrawnStyle& style, const DrawnHead& head, double room) {
    return drawnWidth(style.strong, head.title) + style.u(kHeadGap) + drawnWidth(style.plain, head.remark) <= room;
}

} // namespace

double paragraphHigh(const QFont& font, double room, const QString& text) {
    return QFontMetricsF(font).boundingRect(QRectF(0, 0, room, 1e4), kWrapped, text).height();
}

double drawnParagraph(QPainter& painter, const DrawnStyle&, const QFont& font, const QRectF& box, const QString& text) {
    painter.setFont(font);
    painter.drawText(box, kWrapped, text);
    return box.top() + paragraphHigh(font, box.width(), text);
}

double DrawnHead::height(const DrawnStyle& style, double room) const {
    if (remark.isEmpty() || besideTitle(style, *this, room)) return style.u(kHeadHigh);
    return style.u(kHeadHigh + kRemarkGap) + paragraphHigh(style.plain, room, remark);
}

void DrawnHead::paint(QPainter& painter, const DrawnStyle& style, double left, double room) const {
    painter.setPen(ink(style.look.ink));
    drawnText(painter, style, style.strong, {left, style.u(kHeadBase)}, title);
    painter.setPen(ink(style.look.ink2));
    if (besideTitle(style, *this, room)) {
        const double at = left + drawnWidth(style.strong, title) + style.u(kHeadGap);
        drawnText(painter, style, style.plain, {at, style.u(kHeadBase)}, remark);
        return;
    }
    drawnParagraph(painter, style, style.plain, QRectF(left, style.u(kHeadHigh - kRemarkGap), room, 1e4), remark);
}

} // namespace hammerline
