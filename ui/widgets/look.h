// The one table of colours, type sizes and measures. Nothing else in ui names a colour or a literal pixel.
#pragma once

#include <QColor>
#include <QFont>
#include <QPalette>

#include <array>

class QWidget;

namespace hammerline {

enum class Theme : std::uint8_t { light, dark };

/// A stop of the deviation ramp: fill and the text that stands on it.
struct RampStop {
    QRgb fill;
    QRgb text;
};

/// Colours of one theme. Colour means deviation; everything else is felt, ink and paper.
struct Look {
    QRgb bench, paper, paper2, head, line, edge;
    QRgb ink, ink2, ink3, sel, ring, halo;
    QRgb rail, railText, rail2, act, actText;
    QRgb zone, fault, faultBg;
    QRgb naturalTop, sharpTop;    // drawn keys
    QRgb felt;                    // drawn felt and cloth, always outlined in ink, never under text
    std::array<RampStop, 7> ramp; // low 3, low 2, low 1, within, high 1, high 2, high 3

    /// Stop for marks 0..3 on the low (sign < 0) or high side.
    const RampStop& stop(int marks, bool high) const {
        return ramp[static_cast<std::size_t>(3 + (high ? marks : -marks))];
    }
};

/// A colour of the table for a painter.
inline QColor ink(QRgb colour) {
    return QColor::fromRgb(colour);
}

const Look& lookOf(Theme);
/// The look that fits a palette: dark where its window is darker than its text.
const Look& lookOf(const QPalette&);
const Look& lookOf(const QWidget&);
Theme themeOf(const QPalette&);
/// A Fusion palette filled from the table.
QPalette paletteOf(Theme);

/// Sizes of type, in points at a text size of 100 % (look.md 3).
enum class Text : std::uint8_t { tiny, label, body, digits, listDigits, aim, amount, title, pitch };
/// The application face in that size; everything scales with the application font.
QFont face(Text, bool bold = false);
/// Italic: expected, never measured.
QFont expectedFace(Text);
/// A text that ends in dots where it has no room.
QString elided(const QString&, const QFont&, double room);

/// `n` units of measure in whole pixels; one unit is 4 px at the base font and grows with it.
int u(double n);
/// The same without rounding, for lines.
double units(double n);

/// Sets style, face and palette of the application. `textSize` in per cent, 80 to 200.
void dress(Theme, int textSize);
/// What the desktop uses, by the palette the application started with, or as it has said since.
Theme desktopTheme();
void setDesktopTheme(Theme);
int textSize();

} // namespace hammerline
