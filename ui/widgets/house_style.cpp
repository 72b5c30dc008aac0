#include "ui/widgets/house_style.h"

#include "ui/widgets/look.h"

#include <QApplication>
#include <QPainter>
#include <QStyleOption>

#include <algorithm>

namespace hammerline {

namespace {

/// Fusion takes its outlines from the window's colour, too faint to be seen; ours have 3:1 to what lies beside them.
void paintEdge(QPainter& painter, const QStyleOption& option, bool round = false) {
    const Look& look = lookOf(option.palette);
    const bool focus = option.state & QStyle::State_HasFocus;
    const double width = focus ? units(0.5) : 1, half = width / 2;
    const QRectF box = QRectF(option.rect).adjusted(half, half, -half, -half);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(ink(focus ? look.ring : look.edge), width));
    if (round)
        painter.drawEllipse(box);
    else
        painter.drawRoundedRect(box, units(0.75), units(0.75));
    painter.restore();
}

/// A flat button and a raised tool have none until they are pressed or under the pointer.
bool hasEdge(QStyle::PrimitiveElement element, const QStyleOption& option) {
    const bool pressed = option.state & (QStyle::State_Sunken | QStyle::State_On);
    switch (element) {
    case QStyle::PE_PanelButtonCommand: {
        const auto* button = qstyleoption_cast<const QStyleOptionButton*>(&option);
        return !button || !(button->features & QStyleOptionButton::Flat) || pressed;
    }
    case QStyle::PE_PanelButtonTool:
        return !(option.state & QStyle::State_AutoRaise) || pressed || (option.state & QStyle::State_Raised);
    case QStyle::PE_IndicatorCheckBox:
    case QStyle::PE_IndicatorRadioButton:
    case QStyle::PE_IndicatorItemViewItemCheck:
        return true;
    default:
        return false;
    }
}

} // namespace

namespace {
bool s_reducedMotion = false;
}

void HouseStyle::setReducedMotion(bool reduced) {
    s_reducedMotion = reduced;
}

int HouseStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                          QStyleHintReturn* more) const {
    if (hint == SH_Widget_Animation_Duration && s_reducedMotion) return 0;
    return QProxyStyle::styleHint(hint, option, widget, more);
}

HouseStyle::HouseStyle() : QProxyStyle(QStringLiteral("Fusion")) {
    setObjectName(QStringLiteral("hammerline"));
}

void HouseStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const {
    if (element != PE_FrameLineEdit) QProxyStyle::drawPrimitive(element, option, painter, widget);
    if (element == PE_FrameLineEdit || hasEdge(element, *option))
        paintEdge(*painter, *option, element == PE_IndicatorRadioButton);
}

void HouseStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                             const QWidget* widget) const {
    if (element != CE_HeaderSection && element != CE_HeaderEmptyArea)
        return QProxyStyle::drawControl(element, option, painter, widget);
    const Look& look = lookOf(option->palette);
    const QRect& r = option->rect;
    painter->fillRect(r, ink(look.paper));
    painter->fillRect(QRect(r.left(), r.bottom(), r.width(), 1), ink(look.edge));
}

void HouseStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                                    const QWidget* widget) const {
    const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
    if (control != CC_ScrollBar || !bar) {
        QProxyStyle::drawComplexControl(control, option, painter, widget);
        if (control == CC_ComboBox || control == CC_SpinBox) paintEdge(*painter, *option);
        return;
    }
    const Look& look = lookOf(option->palette);
    painter->fillRect(option->rect, ink(look.head));
    const bool upright = bar->orientation == Qt::Vertical;
    painter->fillRect(upright ? QRect(bar->rect.left(), bar->rect.top(), 1, bar->rect.height())
                              : QRect(bar->rect.left(), bar->rect.top(), bar->rect.width(), 1),
                      ink(look.line));
    if (bar->minimum >= bar->maximum) return;
    const QRect slider = proxy()->subControlRect(control, option, SC_ScrollBarSlider, widget);
    const double side = units(0.75);
    const bool held = (bar->activeSubControls & SC_ScrollBarSlider) && (bar->state & (State_Sunken | State_MouseOver));
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(Qt::NoPen);
    painter->setBrush(ink(held ? look.ink2 : look.edge));
    painter->drawRoundedRect(QRectF(slider).adjusted(side, side, -side, -side), units(0.75), units(0.75));
    painter->restore();
}

/// The menu bar asks at once for the sign of menus that have no room, and Fusion's comes from a file through a plugin:
/// at every start, for a sign that is hardly ever seen.
QIcon HouseStyle::standardIcon(StandardPixmap which, const QStyleOption* option, const QWidget* widget) const {
    if (which != SP_ToolBarHorizontalExtensionButton) return QProxyStyle::standardIcon(which, option, widget);
    const int side = u(4);
    QPixmap sign(side, side);
    sign.fill(Qt::transparent);
    QPainter painter(&sign);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ink(lookOf(QApplication::palette()).ink), units(0.4)));
    for (const double x : {0.25, 0.55})
        painter.drawPolyline(
            QPolygonF{{QPointF(x, 0.25) * side, QPointF(x + 0.25, 0.5) * side, QPointF(x, 0.75) * side}});
    painter.end();
    return QIcon(sign);
}

/// Without arrows at the ends: the whole length is the groove.
QRect HouseStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                                 const QWidget* widget) const {
    const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
    if (control != CC_ScrollBar || !bar) return QProxyStyle::subControlRect(control, option, part, widget);
    const bool upright = bar->orientation == Qt::Vertical;
    const int length = upright ? bar->rect.height() : bar->rect.width();
    const int range = bar->maximum - bar->minimum;
    const int wanted =
        range > 0 ? static_cast<int>(std::int64_t{length} * bar->pageStep / (range + bar->pageStep)) : length;
    const int much = std::clamp(wanted, std::min(length, pixelMetric(PM_ScrollBarSliderMin, bar, widget)), length);
    const int at =
        sliderPositionFromValue(bar->minimum, bar->maximum, bar->sliderPosition, length - much, bar->upsideDown);
    const auto along = [&](int from, int size) {
        const QRect rect = upright ? QRect(0, from, bar->rect.width(), size) : QRect(from, 0, size, bar->rect.height());
        return visualRect(bar->direction, bar->rect, rect.translated(bar->rect.topLeft()));
    };
    switch (part) {
    case SC_ScrollBarGroove:
        return along(0, length);
    case SC_ScrollBarSlider:
        return along(at, much);
    case SC_ScrollBarSubPage:
        return along(0, at);
    case SC_ScrollBarAddPage:
        return along(at + much, length - at - much);
    default:
        return {};
    }
}

} // namespace hammerline
