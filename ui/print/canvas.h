// Drawing on paper in millimetres and points, the same on a printer, in a PDF file and as a picture, at any resolution:
// one painter unit is 1/100 mm and text is set in those units, unhinted, so that nothing depends on the device.
#pragma once

#include "ui/words/sign.h"

#include <QPainter>
#include <QRectF>
#include <QString>

#include <functional>
#include <vector>

namespace hammerline::print {

struct Type {
    double points = 10;
    bool bold = false;
    bool italic = false;
};

/// Painter units a millimetre, and a face in them: for painters that the screen shares.
inline constexpr double kCanvasUnits = 100;
QFont canvasFont(Type);

/// A stretch of text in one weight; a paragraph is a list of them.
struct Run {
    QString text;
    bool bold = false;
};
using Paragraph = std::vector<Run>;

enum class Align { left, right, centre };

// Measures, mm. They need no painter.
double textWidth(const QString&, Type);
/// Distance of two base lines.
double lineHeight(Type);
double ascent(Type);
double paragraphHeight(const Paragraph&, Type, double width);

class Canvas {
public:
    /// The painter's origin is the top left corner of the printable page; `dotsPerMm` of its device.
    Canvas(QPainter&, double dotsPerMm);
    ~Canvas();
    Canvas(const Canvas&) = delete;
    Canvas& operator=(const Canvas&) = delete;

    /// Text with its base line at y; x is the left edge, right edge or middle. Gives the width.
    double text(double x, double y, const QString&, Type, Align = Align::left);
    /// The same, set smaller where it would be wider than `width` (never under 7 pt; then it is cut with a dot).
    double textWithin(double x, double y, double width, const QString&, Type, Align = Align::left);
    /// Broken over lines from the top edge y; gives the height.
    double paragraph(double x, double y, double width, const Paragraph&, Type);

    /// Hands the painter over for a place in mm; the place is given in painter units.
    void draw(const QRectF& place, const std::function<void(QPainter&, const QRectF&)>&);

    void line(double x1, double y1, double x2, double y2, double thickness = 0.3);
    void frame(const QRectF&, double thickness = 0.5, double corner = 0);
    void fill(const QRectF&);
    /// An empty box to tick, its side mm.
    void tickBox(double x, double y, double side = 5.5, bool ticked = false);
    /// A key's top: white for a natural, black for a sharp.
    void keySwatch(double x, double y, bool sharp, double width = 2.1, double height = 4.4);
    /// Up (high) or down (low), pointing; its base mm.
    void triangle(double x, double y, bool up, double base = 2.0);
    /// The way of the work as a sign, centred in a circle of that radius.
    void turn(double cx, double cy, words::Sign, double radius = 1.7);

private:
    QPainter& m_painter;
};

} // namespace hammerline::print
