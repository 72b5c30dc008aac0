#include "ui/widgets/plate.h"

#include "ui/widgets/marks.h"

namespace hammerline {

namespace {
constexpr double kPad = 2.5, kSign = 5.5, kPlateGap = 3;
} // namespace

Plate::Plate(QWidget* parent) : QFrame(parent) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setFocusPolicy(Qt::NoFocus);
    hide();
}

void Plate::say(Kind kind, const QString& headline, const QString& more) {
    m_kind = kind;
    m_headline = headline;
    m_more = more;
    setAccessibleName(spoken());
    update();
}

bool Plate::oneLine() const {
    return m_kind == Kind::echo;
}

QSize Plate::wanted(int most) const {
    const QFontMetrics bold(face(Text::body, true)), plain(face(Text::body));
    if (oneLine())
        return {bold.horizontalAdvance(m_headline) +
                    (m_more.isEmpty() ? 0 : u(kPlateGap) + plain.horizontalAdvance(m_more)) + u(2 * kPad),
                u(6.5)};
    const int side = u(2 * kPad + kSign);
    const int natural = std::max(bold.horizontalAdvance(m_headline), plain.horizontalAdvance(m_more)) + side + u(0.5);
    const int width = std::min(natural, most);
    const QRect room(0, 0, width - side, 10'000);
    const int height = bold.boundingRect(room, Qt::TextWordWrap, m_headline).height() +
                       (m_more.isEmpty() ? 0 : plain.boundingRect(room, Qt::TextWordWrap, m_more).height());
    return {width, height + u(3)};
}

void Plate::standBy(const QRect& field, const QRect& room) {
    const int gap = u(1.25);
    const QSize size = wanted(std::min(room.width() - u(2), u(100)));
    QRect box(QPoint(field.right() + gap + 1, field.center().y() - size.height() / 2 + 1), size);
    if (!oneLine() || box.right() > room.right()) {
        box.moveTop(field.bottom() + gap);
        if (oneLine()) box.moveLeft(field.left());
        if (box.bottom() > room.bottom()) box.moveBottom(field.top() - gap);
    }
    if (box.right() > room.right() - u(0.5)) box.moveRight(room.right() - u(0.5));
    if (box.left() < room.left()) box.moveLeft(room.left());
    setGeometry(box);
    raise();
    show();
}

void Plate::paintEvent(QPaintEvent*) {
    const Look& look = lookOf(*this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool refusal = m_kind == Kind::refusal;
    const QColor fill = QColor::fromRgb(oneLine() ? look.ink : refusal ? look.faultBg : look.paper);
    const QColor text = QColor::fromRgb(oneLine() ? look.paper : look.ink);
    const QColor frame = QColor::fromRgb(oneLine() ? look.ink : refusal ? look.fault : look.ink);
    painter.setBrush(fill);
    painter.setPen(QPen(frame, 2));
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), units(0.75), units(0.75));
    painter.setPen(text);
    const QFont bold = face(Text::body, true), plain = face(Text::body);
    const QFontMetrics boldMetrics(bold);
    if (oneLine()) {
        painter.setFont(bold);
        QRect line = rect().adjusted(u(kPad), 0, -u(kPad), 0);
        painter.drawText(line, Qt::AlignVCenter, m_headline);
        line.setLeft(line.left() + boldMetrics.horizontalAdvance(m_headline) + u(kPlateGap));
        painter.setFont(plain);
        painter.drawText(line, Qt::AlignVCenter, m_more);
        return;
    }
    const QRect inner = rect().adjusted(u(kPad + kSign), u(1.5), -u(kPad), -u(1.5));
    painter.setFont(bold);
    QRect used;
    painter.drawText(inner, Qt::TextWordWrap, m_headline, &used);
    painter.setFont(plain);
    painter.drawText(QRect(inner.left(), used.bottom() + 1, inner.width(), inner.height()), Qt::TextWordWrap, m_more);
    const QRectF sign(u(kPad), inner.top() + units(0.75), units(4), units(3.6));
    if (refusal) {
        paintWarning(painter, sign, QColor::fromRgb(look.fault), fill);
    } else {
        painter.setFont(face(Text::title, true));
        painter.drawText(sign.adjusted(0, -units(1), 0, units(1)), Qt::AlignCenter, QStringLiteral("?"));
    }
}

} // namespace hammerline
