// Fusion, but with the frame of a field in the look's own colours: Fusion takes it from the window's and lets it vanish
// on a dark one. A field that has the focus shows it by the ring.
#pragma once

#include <QProxyStyle>

namespace hammerline {

class HouseStyle : public QProxyStyle {
    Q_OBJECT
public:
    HouseStyle();
    void drawPrimitive(PrimitiveElement, const QStyleOption*, QPainter*, const QWidget* = nullptr) const override;
};

} // namespace hammerline
