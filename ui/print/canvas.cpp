#include "ui/print/canvas.h"

#include <QFontMetricsF>
#include <QGuiApplication>
#include <QPainterPath>
#include <QTextLayout>

#include <cmath>

namespace hammerline::print {

namespace {

constexpr double kUnits = kCanvasUnits;
constexpr double kPointUnits = kUnits * 25.4 / 72; // a point in painter units

QFont fontOf(Type type) {
    QFont font;
    font.setFamilies({QStringLiteral("Noto Sans"), QStringLiteral("DejaVu Sans")});
    font.setStyleHint(QFont::SansSerif);
    font.setPixelSize(qRound(type.points * kPointUnits));
    font.setBold(type.bold);
    font.setItalic(type.italic);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

/// Lays a paragraph out in the width (units) and gives its height; lines stand where they are to be drawn.
double layOut(QTextLayout& layout, const Paragraph& paragraph, Type type, double width) {
    QString text;
    QList<QTextLayout::FormatRange> formats;
    for (const Run& run : paragraph) {
        QTextCharFormat format;
        format.setFont(fontOf({type.points, type.bold || run.bold, type.italic}));
        formats.push_back({static_cast<int>(text.size()), static_cast<int>(run.text.size()), format});
        text += run.text;
    }
    layout.setFont(fontOf(type));
    layout.setText(text);
    layout.setFormats(formats);
    double y = 0;
    layout.beginLayout();
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(width);
        line.setPosition({0, y});
        y += line.height();
    }
    layout.endLayout();
    return y;
}

} // namespace

QFont canvasFont(Type type) {
    return fontOf(type);
}

double textWidth(const QString& text, Type type) {
    return QFontMetricsF(fontOf(type)).horizontalAdvance(text) / kUnits;
}
double lineHeight(Type type) {
    return QFontMetricsF(fontOf(type)).height() / kUnits;
}
double ascent(Type type) {
    return QFontMetricsF(fontOf(type)).capHeight() / kUnits;
}

double paragraphHeight(const Paragraph& paragraph, Type type, double width) {
    QTextLayout layout;
    return layOut(layout, paragraph, type, width * kUnits) / kUnits;
}

Canvas::Canvas(QPainter& painter, double dotsPerMm) : m_painter(painter) {
    m_painter.save();
    m_painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    m_painter.scale(dotsPerMm / kUnits, dotsPerMm / kUnits);
    m_painter.setPen(Qt::black);
}
Canvas::~Canvas() {
    m_painter.restore();
}

double Canvas::text(double x, double y, const QString& text, Type type, Align align) {
    const double width = textWidth(text, type);
    const double left = align == Align::left ? x : align == Align::right ? x - width : x - width / 2;
    m_painter.setPen(Qt::black);
    m_painter.setFont(fontOf(type));
    m_painter.drawText(QPointF(left * kUnits, y * kUnits), text);
    return width;
}

double Canvas::textWithin(double x, double y, double width, const QString& text, Type type, Align align) {
    constexpr double kLeast = 7;
    const double wanted = textWidth(text, type);
    if (wanted <= width) return this->text(x, y, text, type, align);
    type.points = std::max(kLeast, std::floor(type.points * width / wanted * 4) / 4);
    const QString cut = QFontMetricsF(fontOf(type)).elidedText(text, Qt::ElideRight, width * kUnits);
    return this->text(x, y, cut, type, align);
}

double Canvas::paragraph(double x, double y, double width, const Paragraph& paragraph, Type type) {
    QTextLayout layout;
    const double height = layOut(layout, paragraph, type, width * kUnits);
    m_painter.setPen(Qt::black);
    layout.draw(&m_painter, {x * kUnits, y * kUnits});
    return height / kUnits;
}

void Canvas::draw(const QRectF& place, const std::function<void(QPainter&, const QRectF&)>& paint) {
    m_painter.save();
    paint(m_painter, QRectF(place.x() * kUnits, place.y() * kUnits, place.width() * kUnits, place.height() * kUnits));
    m_painter.restore();
}

void Canvas::line(double x1, double y1, double x2, double y2, double thickness) {
    m_painter.setPen(QPen(Qt::black, thickness * kUnits, Qt::SolidLine, Qt::FlatCap));
    m_painter.drawLine(QLineF(x1 * kUnits, y1 * kUnits, x2 * kUnits, y2 * kUnits));
}

void Canvas::frame(const QRectF& r, double thickness, double corner) {
    m_painter.setPen(QPen(Qt::black, thickness * kUnits, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    m_painter.setBrush(Qt::NoBrush);
    const double in = thickness / 2;
    const QRectF inner((r.x() + in) * kUnits, (r.y() + in) * kUnits, (r.width() - thickness) * kUnits,
                       (r.height() - thickness) * kUnits);
    m_painter.drawRoundedRect(inner, corner * kUnits, corner * kUnits);
}

void Canvas::fill(const QRectF& r) {
    m_painter.fillRect(QRectF(r.x() * kUnits, r.y() * kUnits, r.width() * kUnits, r.height() * kUnits), Qt::black);
}

void Canvas::tickBox(double x, double y, double side, bool ticked) {
    frame({x, y, side, side}, 0.45, 0.5);
    if (!ticked) return;
    line(x + 0.2 * side, y + 0.52 * side, x + 0.42 * side, y + 0.76 * side, 0.6);
    line(x + 0.42 * side, y + 0.76 * side, x + 0.82 * side, y + 0.22 * side, 0.6);
}

void Canvas::keySwatch(double x, double y, bool sharp, double width, double height) {
    if (sharp)
        fill({x, y, width, height});
    else
        frame({x, y, width, height}, 0.3, 0.3);
}

void Canvas::triangle(double x, double y, bool up, double base) {
    const double height = base * 0.85;
    QPainterPath path;
    path.moveTo(x * kUnits, (up ? y + height : y) * kUnits);
    path.lineTo((x + base) * kUnits, (up ? y + height : y) * kUnits);
    path.lineTo((x + base / 2) * kUnits, (up ? y : y + height) * kUnits);
    path.closeSubpath();
    m_painter.fillPath(path, Qt::black);
}

namespace {

/// An open circle with a head at its end: anticlockwise as drawn; the other way it is mirrored.
QPainterPath roundArrow(double r) {
    QPainterPath arc;
    const QRectF box(-r, -r, 2 * r, 2 * r);
    arc.arcMoveTo(box, -150);
    arc.arcTo(box, -150, 270); // from lower left by the bottom and the right to the top
    return arc;
}

QPainterPath roundHead(double r) {
    // At the arc's end, the top a little to the left: pointing left and down.
    const double angle = 120 * M_PI / 180;
    const QPointF end(r * std::cos(angle), -r * std::sin(angle));
    const QPointF along(-std::sin(angle), -std::cos(angle)); // of growing angle, y down
    const QPointF across(-along.y(), along.x());
    QPainterPath head;
    head.moveTo(end + along * (r * 0.75));
    head.lineTo(end - along * (r * 0.2) + across * (r * 0.62));
    head.lineTo(end - along * (r * 0.2) - across * (r * 0.62));
    head.closeSubpath();
    return head;
}

QPainterPath straightHead(double tip, double r) {
    QPainterPath head;
    const double back = tip > 0 ? -r * 0.7 : r * 0.7;
    head.moveTo(tip, 0);
    head.lineTo(tip + back, r * 0.5);
    head.lineTo(tip + back, -r * 0.5);
    head.closeSubpath();
    return head;
}

} // namespace

void Canvas::turn(double cx, double cy, words::Sign turn, double radius) {
    if (turn == words::Sign::none) return;
    const double r = radius * kUnits;
    m_painter.save();
    m_painter.translate(cx * kUnits, cy * kUnits);
    m_painter.setPen(QPen(Qt::black, r * 0.26, Qt::SolidLine, Qt::FlatCap));
    m_painter.setBrush(Qt::NoBrush);
    switch (turn) {
    case words::Sign::clockwise:
        m_painter.scale(-1, 1);
        [[fallthrough]];
    case words::Sign::anticlockwise:
        m_painter.drawPath(roundArrow(r));
        m_painter.fillPath(roundHead(r), Qt::black);
        break;
    case words::Sign::add:
        m_painter.drawLine(QLineF(0, -r * 0.9, 0, r * 0.9));
        [[fallthrough]];
    case words::Sign::remove:
        m_painter.drawLine(QLineF(-r * 0.9, 0, r * 0.9, 0));
        break;
    case words::Sign::toward: // to the bar
        m_painter.drawLine(QLineF(-r, 0, r * 0.4, 0));
        m_painter.drawLine(QLineF(r, -r * 0.8, r, r * 0.8));
        m_painter.fillPath(straightHead(r * 0.85, r), Qt::black);
        break;
    case words::Sign::away: // from the bar
        m_painter.drawLine(QLineF(-r * 0.4, 0, r, 0));
        m_painter.drawLine(QLineF(r, -r * 0.8, r, r * 0.8));
        m_painter.fillPath(straightHead(-r, r), Qt::black);
        break;
    case words::Sign::look:
        m_painter.drawEllipse(QPointF(0, 0), r * 0.6, r * 0.6);
        break;
    case words::Sign::none:
        break;
    }
    m_painter.restore();
}

} // namespace hammerline::print
