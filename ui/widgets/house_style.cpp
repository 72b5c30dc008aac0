#include "ui/widgets/house_style.h"

#include "ui/widgets/look.h"

#include <QPainter>
#include <QStyleOption>

namespace hammerline {

HouseStyle::HouseStyle() : QProxyStyle(QStringLiteral("Fusion")) {
    setObjectName(QStringLiteral("hammerline"));
}

void HouseStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const {
    if (element != PE_FrameLineEdit) return QProxyStyle::drawPrimitive(element, option, painter, widget);
    const Look& look = lookOf(option->palette);
    const bool focus = option->state & State_HasFocus;
    const double width = focus ? units(0.5) : 1, half = width / 2;
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setBrush(Qt::NoBrush);
    painter->setPen(QPen(ink(focus ? look.ring : look.edge), width));
    painter->drawRoundedRect(QRectF(option->rect).adjusted(half, half, -half, -half), units(0.75), units(0.75));
    painter->restore();
}

} // namespace hammerline
