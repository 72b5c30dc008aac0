#include "ui/first/pick_button.h"

#include "ui/widgets/marks.h"

#include <QPainter>

namespace hammerline {

namespace {

constexpr double kDrawnHigh = 11, kRowHigh = 7.5; // of the drawing, of the word's row

/// A case from the side, in a field of 24 x 11 u: outline, keys, and where its action lies.
void drawCase(QPainter& painter, QPointF middle, ActionKind kind) {
    const auto box = [&](double left, double top, double wide, double high) {
        painter.drawRect(QRectF(middle.x() + units(left), middle.y() + units(top), units(wide), units(high)));
    };
    const auto line = [&](double x1, double y1, double x2, double y2) {
        painter.drawLine(middle + QPointF(units(x1), units(y1)), middle + QPointF(units(x2), units(y2)));
    };
    switch (kind) {
    case ActionKind::upright:
        box(-3, -5, 7, 10);
        box(-5, 0, 3, 1.25);
        line(-4.5, 1.25, -4.5, 5);
        line(0, -3.5, 0, -0.5); // the action stands above its keys
        break;
    case ActionKind::drop:
        box(-3, -2.5, 8, 7.5);
        box(-5, -2.5, 3, 1.25);
        line(-4.5, -1.25, -4.5, 5);
        line(1, 0, 1, 3); // and here below them
        break;
    case ActionKind::grand:
        box(-8, -1, 16, 2.5);
        line(-6, -1, 6, -5);
        line(6, -5, 7, -1);
        line(-6.5, 1.5, -6.5, 5);
        line(0, 1.5, 0, 5);
        line(6.5, 1.5, 6.5, 5);
        break;
    }
}

} // namespace

PickButton::PickButton(const QString& text, std::optional<ActionKind> drawn, QWidget* parent)
    : QAbstractButton(parent), m_drawn(drawn) {
    setText(text);
    setAccessibleName(text);
    setCheckable(true);
    setAutoExclusive(true);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

QSize PickButton::sizeHint() const {
    const int word = QFontMetrics(face(Text::body, true)).horizontalAdvance(text()) + u(6);
    return m_drawn ? QSize(std::max(word, u(28)), u(kDrawnHigh + kRowHigh)) : QSize(word, u(kRowHigh));
}

void PickButton::paintEvent(QPaintEvent*) {
    const Look& look = lookOf(*this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ink(isChecked() ? look.ink : look.edge), isChecked() ? 2 : 1));
    painter.setBrush(ink(isChecked() ? look.sel : look.paper));
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), units(1), units(1));
    painter.setPen(QPen(ink(look.ink), units(0.4)));
    if (m_drawn) {
        painter.setBrush(Qt::NoBrush);
        drawCase(painter, QPointF(width() / 2.0, units(kDrawnHigh / 2 + 1)), *m_drawn);
    }
    painter.setFont(face(Text::body, isChecked()));
    painter.drawText(rect().adjusted(0, m_drawn ? u(kDrawnHigh) : 0, 0, 0), Qt::AlignCenter, text());
    if (hasFocus()) paintRing(painter, QRectF(rect()), look, true);
}

} // namespace hammerline
