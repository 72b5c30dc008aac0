// Fusion, but with the frame of a field in the look's own colours: Fusion takes it from the window's and lets it vanish
// on a dark one. A field that has the focus shows it by the ring. Scroll bars are flat, as everything here is: Fusion
// lays three gradients at every row that the grid goes on. So are the heads of stock lists.
#pragma once

#include <QProxyStyle>

namespace hammerline {

class HouseStyle : public QProxyStyle {
    Q_OBJECT
public:
    HouseStyle();
    /// Where the desktop wants less motion nothing here moves by itself: the style's duration of an animation is 0.
    static void setReducedMotion(bool);
    int styleHint(StyleHint, const QStyleOption* = nullptr, const QWidget* = nullptr,
                  QStyleHintReturn* = nullptr) const override;
    void drawPrimitive(PrimitiveElement, const QStyleOption*, QPainter*, const QWidget* = nullptr) const override;
    void drawControl(ControlElement, const QStyleOption*, QPainter*, const QWidget* = nullptr) const override;
    void drawComplexControl(ComplexControl, const QStyleOptionComplex*, QPainter*,
                            const QWidget* = nullptr) const override;
    QIcon standardIcon(StandardPixmap, const QStyleOption* = nullptr, const QWidget* = nullptr) const override;
    QRect subControlRect(ComplexControl, const QStyleOptionComplex*, SubControl,
                         const QWidget* = nullptr) const override;
};

} // namespace hammerline
