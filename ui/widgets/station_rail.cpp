#include "ui/widgets/station_rail.h"

#include "ui/widgets/marks.h"

#include <QPainterPath>
#include <QVBoxLayout>

namespace hammerline {

namespace {
constexpr double kWidth = 22, kRow = 21.5, kRailAt = 3, kStateAt = 16.6, kForward = 3.5, kHammerAt = 5.5;
} // namespace

Hammer::Hammer(int number, const QString& name, QWidget* parent) : QAbstractButton(parent), m_number(number) {
    setText(name);
    setCheckable(true);
    setAutoExclusive(true); // one of several, as a screen reader says it
    setFocusPolicy(Qt::TabFocus);
    setAccessibleName(name);
    setToolTip(tr("Ctrl+%1").arg(number));
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Maximum);
}

void Hammer::setState(const QString& line) {
    if (line == m_state) return;
    m_state = line;
    setAccessibleDescription(line);
    update();
}

QSize Hammer::sizeHint() const {
    return {u(kWidth), u(kRow)};
}

void Hammer::paintEvent(QPaintEvent*) {
    const Look& look = lookOf(*this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool forward = isChecked();
    const double railX = units(kRailAt), y = units(kHammerAt), tabLeft = railX + units(0.75);
    if (forward) {
        QPainterPath tab;
        tab.addRoundedRect(QRectF(tabLeft, 0, width(), height() - units(1.5)), units(1), units(1));
        painter.fillPath(tab, QColor::fromRgb(look.bench));
    }
    const QColor body = QColor::fromRgb(forward ? look.ink : look.rail2);
    const QColor under = QColor::fromRgb(forward ? look.bench : look.rail);

    // rail, shank and head; the head's digit is cut out of it
    const double head = units(9) + (forward ? units(kForward) : 0), length = units(6.5), half = units(2.4);
    painter.setPen(QPen(QColor::fromRgb(look.rail2), units(0.75)));
    painter.drawLine(QPointF(railX, 0), QPointF(railX, height()));
    painter.setPen(Qt::NoPen);
    painter.setBrush(forward ? QColor::fromRgb(look.railText) : body);
    painter.drawEllipse(QPointF(railX, y), units(1), units(1));
    painter.setPen(QPen(body, units(0.4)));
    painter.drawLine(QPointF(forward ? tabLeft : railX, y), QPointF(head, y));
    QPainterPath shape;
    shape.moveTo(head, y - half);
    shape.lineTo(head + length * 0.35, y - half);
    shape.quadTo(head + length * 0.75, y - half * 0.9, head + length, y);
    shape.quadTo(head + length * 0.75, y + half * 0.9, head + length * 0.35, y + half);
    shape.lineTo(head, y + half);
    shape.closeSubpath();
    painter.fillPath(shape, body);
    painter.setFont(face(Text::tiny, true));
    painter.setPen(under);
    painter.drawText(QRectF(head, y - half, length * 0.7, half * 2), Qt::AlignCenter, QString::number(m_number));

    painter.setPen(QColor::fromRgb(forward ? look.ink : look.railText));
    painter.setFont(face(Text::body, forward));
    painter.drawText(QPointF(units(6), units(12.9)), text());
    painter.setPen(QColor::fromRgb(forward ? look.ink2 : look.rail2));
    painter.setFont(face(Text::tiny));
    const QFontMetrics small(painter.font());
    const bool whole =
        units(kStateAt) + small.descent() <= height(); // large type in a low window: none, not half of it
    if (whole)
        painter.drawText(QPointF(units(6), units(kStateAt)),
                         small.elidedText(m_state, Qt::ElideRight, width() - u(6.5)));
    if (hasFocus()) paintRing(painter, QRectF(rect()).adjusted(tabLeft, 0, -1, -units(1.5)), look, true);
}

StationRail::StationRail(const QStringList& names, QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Stations"));
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, u(2.5), 0, 0);
    column->setSpacing(0);
    for (qsizetype i = 0; i < names.size(); ++i) {
        auto* hammer = new Hammer(static_cast<int>(i) + 1, names[i], this);
        hammer->setObjectName(QStringLiteral("station%1").arg(i + 1));
        m_group.addButton(hammer, static_cast<int>(i));
        column->addWidget(hammer);
    }
    column->addStretch(1);
    m_group.setExclusive(true);
    connect(&m_group, &QButtonGroup::idClicked, this, &StationRail::asked);
}

void StationRail::setCurrent(int index) {
    if (auto* button = m_group.button(index)) button->setChecked(true);
}
int StationRail::current() const {
    return m_group.checkedId();
}
void StationRail::setState(int index, const QString& line) {
    if (auto* hammer = qobject_cast<Hammer*>(m_group.button(index))) hammer->setState(line);
}

QSize StationRail::sizeHint() const {
    return {u(kWidth), u(kRow * static_cast<double>(m_group.buttons().size()))};
}

void StationRail::paintEvent(QPaintEvent*) {
    const Look& look = lookOf(*this);
    QPainter painter(this);
    painter.fillRect(rect(), QColor::fromRgb(look.rail));
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(QColor::fromRgb(look.rail2), units(0.75), Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(QPointF(units(kRailAt), units(3.5)),
                     QPointF(units(kRailAt), units(kRow * static_cast<double>(m_group.buttons().size()))));
}

} // namespace hammerline
