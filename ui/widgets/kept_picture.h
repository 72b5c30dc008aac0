// A picture that is painted once and laid down as it is, until it is forgotten or what it is laid on has another size
// or scale. For what stands still behind something that moves.
#pragma once

#include <QPainter>
#include <QPixmap>

#include <cmath>

namespace hammerline {

class KeptPicture {
public:
    void forget() { m_picture = {}; }

    /// `paint(QPainter&)` paints over `ground` in the place's own coordinates, its upper left at 0.
    template <class Paint>
    void lay(QPainter& painter, const QRect& place, const QColor& ground, Paint paint) {
        const double scale = painter.deviceTransform().m11(); // of the device or of the picture it is rendered into
        const QSize dots(static_cast<int>(std::ceil(place.width() * scale)),
                         static_cast<int>(std::ceil(place.height() * scale)));
        if (m_picture.size() != dots || m_scale != scale) {
            m_scale = scale;
            m_picture = QPixmap(dots);
            m_picture.setDevicePixelRatio(scale);
            m_picture.fill(ground);
            QPainter into(&m_picture);
            into.setRenderHints(painter.renderHints());
            paint(into);
        }
        painter.drawPixmap(place.topLeft(), m_picture);
    }

private:
    QPixmap m_picture;
    double m_scale = 0;
};

} // namespace hammerline
