#include "ui/widgets/marks.h"

#include <QFontMetricsF>
#include <QPainterPath>

namespace hammerline {

namespace {
constexpr double kTriangleHeight = 6.5 / 8.0; // of its width
constexpr double kTriangleGap = 2.0 / 8.0;
constexpr char16_t kSharp = 0x266F;

/// A sharp sign in a box of cap height, a little wider than a digit is narrow.
double sharpWidth(const QFont& font) {
    return QFontMetricsF(font).capHeight() * 0.72;
}

void paintSharp(QPainter& painter, QPointF baseline) {
    const double h = QFontMetricsF(painter.font()).capHeight();
    const double w = sharpWidth(painter.font());
    const double x = baseline.x(), top = baseline.y() - h * 1.08, bottom = baseline.y() + h * 0.08;
    const double stroke = h * (painter.font().bold() ? 0.14 : 0.085);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(painter.pen().color(), stroke, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(x + w * 0.32, top + h * 0.10), QPointF(x + w * 0.32, bottom));
    painter.drawLine(QPointF(x + w * 0.66, top), QPointF(x + w * 0.66, bottom - h * 0.10));
    painter.setPen(QPen(painter.pen().color(), stroke * 1.45, Qt::SolidLine, Qt::FlatCap));
    for (const double y : {0.36, 0.70}) {
        const double at = baseline.y() - h + h * y;
        painter.drawLine(QPointF(x + w * 0.06, at + h * 0.06), QPointF(x + w * 0.92, at - h * 0.09));
    }
    painter.restore();
}
} // namespace

double triangleWidth(int count, double size) {
    return count <= 0 ? 0 : count * size + (count - 1) * size * kTriangleGap;
}

double paintTriangles(QPainter& painter, double left, double middle, int count, bool up, const QColor& colour,
                      double size) {
    const double h = size * kTriangleHeight / 2;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    for (int i = 0; i < count; ++i) {
        const double x = left + i * size * (1 + kTriangleGap);
        const double base = up ? middle + h : middle - h, tip = up ? middle - h : middle + h;
        painter.drawPolygon(QPolygonF{{QPointF(x, base), QPointF(x + size, base), QPointF(x + size / 2, tip)}});
    }
    painter.restore();
    return left + triangleWidth(count, size);
}

double paintStep(QPainter& painter, double left, double middle, const QColor& colour, double size) {
    const double h = size * 0.42;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(QPen(colour, size * 0.16, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    const double w = size * 1.25;
    painter.drawPolyline(QPolygonF{{QPointF(left, middle + h), QPointF(left + w * 0.28, middle + h),
                                    QPointF(left + w * 0.28, middle - h), QPointF(left + w * 0.72, middle - h),
                                    QPointF(left + w * 0.72, middle + h), QPointF(left + w, middle + h)}});
    painter.restore();
    return left + w;
}

void paintNotch(QPainter& painter, const QRectF& box, const QColor& ink, const QColor& slot) {
    painter.fillRect(box, ink);
    painter.fillRect(QRectF(box.left() + box.width() * 0.36, box.top(), box.width() * 0.28, box.height() * 0.58), slot);
}

void paintSwatch(QPainter& painter, const QRectF& box, bool sharp, const Look& look) {
    painter.save();
    painter.setPen(QPen(QColor::fromRgb(look.edge), 1));
    painter.setBrush(QColor::fromRgb(sharp ? look.sharpTop : look.naturalTop));
    painter.drawRect(box);
    painter.restore();
}

void paintRing(QPainter& painter, const QRectF& box, const Look& look, bool inside) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    const double grow = inside ? -2.5 : 3.5;
    const QRectF ring = box.adjusted(-grow + 1, -grow + 1, grow - 1, grow - 1);
    painter.setPen(QPen(QColor::fromRgb(look.halo), 7));
    painter.drawRoundedRect(ring, units(0.5), units(0.5));
    painter.setPen(QPen(QColor::fromRgb(look.ring), 3));
    painter.drawRoundedRect(ring, units(0.5), units(0.5));
    painter.restore();
}

void paintHatch(QPainter& painter, const QRectF& box, const QColor& colour) {
    painter.save();
    painter.setClipRect(box, Qt::IntersectClip);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, 1));
    const double by = units(1.5);
    // anchored to the window's pixels, so that neighbouring cells join
    const double start = std::floor((box.left() + box.top()) / by) * by;
    for (double sum = start; sum < box.right() + box.bottom(); sum += by)
        painter.drawLine(QPointF(sum - box.top(), box.top()), QPointF(sum - box.bottom(), box.bottom()));
    painter.restore();
}

void paintWarning(QPainter& painter, const QRectF& box, const QColor& fault, const QColor& paper) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(fault);
    painter.drawPolygon(QPolygonF{{box.bottomLeft(), box.bottomRight(), QPointF(box.center().x(), box.top())}});
    painter.setBrush(paper);
    const double w = box.width() * 0.11;
    painter.drawRect(QRectF(box.center().x() - w / 2, box.top() + box.height() * 0.36, w, box.height() * 0.32));
    painter.drawRect(QRectF(box.center().x() - w / 2, box.top() + box.height() * 0.77, w, w));
    painter.restore();
}

double noteWidth(const QString& text, const QFont& font) {
    const QFontMetricsF metrics{font};
    double width = 0;
    const auto parts = text.split(QChar(kSharp));
    for (const QString& part : parts)
        width += metrics.horizontalAdvance(part);
    return width + static_cast<double>(parts.size() - 1) * sharpWidth(font);
}

double paintNote(QPainter& painter, QPointF baseline, const QString& text) {
    const QFontMetricsF metrics{painter.font()};
    const double from = baseline.x();
    const auto parts = text.split(QChar(kSharp));
    for (qsizetype i = 0; i < parts.size(); ++i) {
        if (i > 0) {
            paintSharp(painter, baseline);
            baseline.rx() += sharpWidth(painter.font());
        }
        painter.drawText(baseline, parts[i]);
        baseline.rx() += metrics.horizontalAdvance(parts[i]);
    }
    return baseline.x() - from;
}

void paintTick(QPainter& painter, const QRectF& box, const QColor& ink) {
    QPen pen(ink, units(0.45));
    pen.setCapStyle(Qt::SquareCap);
    painter.setPen(pen);
    QPainterPath path(QPointF(box.left(), box.center().y()));
    path.lineTo(box.left() + box.width() * 0.38, box.bottom() - box.height() * 0.22);
    path.lineTo(box.right(), box.top() + box.height() * 0.18);
    painter.strokePath(path, pen);
}

} // namespace hammerline
