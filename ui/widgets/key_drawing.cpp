#include "ui/widgets/key_drawing.h"

#include "core/operation/operation.h"
#include "ui/widgets/action_sketch.h"

#include <QLocale>

namespace hammerline {

namespace {

constexpr double kKeyRow = 26;  // units a key takes, with its two lines of distances
constexpr double kBehind = 12;  // mm of wood behind the back rail's contact
constexpr double kBelow = 13.5; // units from the key's bottom down to the second line of distances

QString length(Length arm) {
    return QLocale().toString(arm.mm(), 'f', arm.nm % kNmPerMm == 0 ? 0 : 1);
}

/// Where things stand across the widget: mm from the natural's front edge to pixels. Both keys lie on one back rail.
struct Across {
    double left, scale, end; // `end`: mm of the back rail's contact
    double at(double mm) const { return left + mm * scale; }
};

class OneKey {
public:
    OneKey(QPainter& painter, const Across& across, double top, const KeyArms& arms, KeyColour colour, const Look& look)
        : m_painter(painter)
        , m_across(across)
        , m_top(top)
        , m_arms(arms)
        , m_sharp(colour == KeyColour::sharp)
        , m_look(look)
        , m_balance(across.end - arms.T()) {}

    void paint() {
        title();
        rails();
        wood();
        distance(1, m_balance - m_arms.P(), m_balance, QStringLiteral("P"), m_arms.frontPin);
        distance(1, m_balance, m_balance + m_arms.C(), QStringLiteral("C"), m_arms.capstan);
        distance(2, m_balance - m_arms.F(), m_balance, QStringLiteral("F"), m_arms.front);
        distance(2, m_balance, m_across.end, QStringLiteral("T"), m_arms.back);
    }

private:
    double high() const { return m_top + units(8.5); } // the key's upper side
    double low() const { return high() + units(3); }
    QRectF block(double from, double to, double top, double bottom) const {
        return {QPointF(m_across.at(from), top), QPointF(m_across.at(to), bottom)};
    }
    void pen(QRgb colour, double width) const { m_painter.setPen(QPen(ink(colour), width)); }

    void title() const {
        m_painter.setFont(face(Text::body, true));
        pen(m_look.ink, 1);
        const QString name = m_sharp ? KeyDrawing::tr("Sharp") : KeyDrawing::tr("Natural");
        m_painter.drawText(QPointF(m_across.left, m_top + units(3.4)), name);
        const double after = m_across.left + QFontMetricsF(face(Text::body, true)).horizontalAdvance(name) + units(2);
        m_painter.setFont(m_arms.measured ? face(Text::label) : expectedFace(Text::label));
        pen(m_look.ink2, 1);
        const KeyLever lever = keyLever(m_arms);
        const auto two = [](double value) { return QLocale().toString(value, 'f', 2); };
        const QString kind = m_arms.measured ? KeyDrawing::tr("measured") : KeyDrawing::tr("customary");
        const QString said =
            kind + KeyDrawing::tr(" · 1 mm of shim at the balance lifts %1").arg(two(lever.heightPerBalance));
        m_painter.drawText(QPointF(after, m_top + units(3.4)),
                           elided(said, m_painter.font(), m_across.at(m_across.end + kBehind) - after));
    }

    void rails() const {
        const double foot = low() + units(3.2);
        pen(m_look.ink2, 1.3);
        m_painter.setBrush(ink(m_look.zone));
        m_painter.drawRect(block(m_across.end - 8, m_across.end + 8, low(), low() + units(1.2))); // back-rail cloth
        const double front = m_balance - m_arms.P();
        m_painter.drawRect(block(front - 7, front + 7, low() + units(1.4), low() + units(2.2))); // front felt
        m_painter.drawRect(block(m_balance - 6, m_balance + 6, low(), low() + units(0.8)));      // balance felt
        m_painter.setBrush(ink(m_look.paper2));
        m_painter.drawRect(block(m_across.end - 8, m_across.end + 8, low() + units(1.2), foot));
        m_painter.drawRect(block(front - 7, front + 7, low() + units(2.2), foot));
        m_painter.drawRect(block(m_balance - 6, m_balance + 6, low() + units(0.8), foot));
    }

    void wood() const {
        pen(m_look.ink2, 1.3);
        const double front = m_balance - m_arms.F(), covered = front + (m_sharp ? 95 : 150);
        m_painter.setBrush(ink(m_look.paper2));
        m_painter.drawRect(block(front, m_across.end + kBehind, high(), low()));
        m_painter.setBrush(ink(m_sharp ? m_look.sharpTop : m_look.naturalTop));
        if (m_sharp) {
            const double slope = m_across.at(covered) + units(1);
            m_painter.drawPolygon(QPolygonF{
                {QPointF(m_across.at(front), high()), QPointF(m_across.at(front) + units(0.8), high() - units(2.4)),
                 QPointF(m_across.at(covered), high() - units(2.4)), QPointF(slope, high())}});
        } else {
            m_painter.drawRect(block(front - 2, covered, high() - units(0.6), high() + units(0.2)));
        }
        // The two pins through the wood, the capstan upon it.
        pen(m_look.ink, 2);
        const auto pin = [&](double mm, double above) {
            m_painter.drawLine(QPointF(m_across.at(mm), high() - above), QPointF(m_across.at(mm), low() + units(2)));
        };
        pin(m_balance, units(1.6));
        m_painter.drawLine(QPointF(m_across.at(m_balance - m_arms.P()), low() - units(1.5)),
                           QPointF(m_across.at(m_balance - m_arms.P()), low() + units(2)));
        const double capstan = m_across.at(m_balance + m_arms.C());
        m_painter.drawLine(QPointF(capstan, high()), QPointF(capstan, high() - units(2)));
        m_painter.setBrush(ink(m_look.ink));
        m_painter.drawChord(QRectF(capstan - units(1.3), high() - units(3.4), units(2.6), units(2.8)), 0, 180 * 16);
    }

    /// A line of the two below the key: witness marks at both ends, the letter and the mm in a gap of it.
    void distance(int line, double from, double to, const QString& letter, Length arm) const {
        const double y = low() + units(line == 1 ? kBelow - 8 : kBelow - 3.6);
        const double a = m_across.at(from), b = m_across.at(to);
        pen(m_look.ink, 1.3);
        m_painter.drawLine(QPointF(a, y - units(1)), QPointF(a, y + units(1)));
        m_painter.drawLine(QPointF(b, y - units(1)), QPointF(b, y + units(1)));
        const QFont bold = face(Text::label, true),
                    plain = m_arms.measured ? face(Text::label) : expectedFace(Text::label);
        const QString number = QLatin1Char(' ') + length(arm);
        const double wide = QFontMetricsF(bold).horizontalAdvance(letter),
                     all = wide + QFontMetricsF(plain).horizontalAdvance(number);
        const double text = (a + b - all) / 2;
        m_painter.drawLine(QPointF(a, y), QPointF(text - units(1), y));
        m_painter.drawLine(QPointF(text + all + units(1), y), QPointF(b, y));
        const double base = y + QFontMetricsF(bold).capHeight() / 2;
        m_painter.setFont(bold);
        m_painter.drawText(QPointF(text, base), letter);
        m_painter.setFont(plain);
        m_painter.drawText(QPointF(text + wide, base), number);
    }

    QPainter& m_painter;
    const Across& m_across;
    double m_top;
    const KeyArms& m_arms;
    bool m_sharp;
    const Look& m_look;
    double m_balance; // mm from the natural's front edge
};

QString spoken(const KeyArms& arms, const QString& key) {
    return KeyDrawing::tr(
               "%1: front edge %2 mm before the balance pin, front pin %3, capstan %4 behind it, back rail %5")
        .arg(key, length(arms.front), length(arms.frontPin), length(arms.capstan), length(arms.back));
}

} // namespace

KeyDrawing::KeyDrawing(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Key arms"));
}

QSize KeyDrawing::sizeHint() const {
    return {u(50), u(2 * kKeyRow + 1)};
}

void KeyDrawing::setPiano(const Piano& piano) {
    m_piano = piano;
    setAccessibleDescription(spoken(piano.armsOf(KeyColour::natural), tr("Natural")) + QLatin1String("; ") +
                             spoken(piano.armsOf(KeyColour::sharp), tr("Sharp")));
    update();
}

void KeyDrawing::paintEvent(QPaintEvent*) {
    if (!m_piano) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = lookOf(*this);
    double end = 0;
    for (const KeyArms& arms : m_piano->arms)
        end = std::max(end, arms.F() + arms.T());
    const double left = units(3), whole = width() - 2 * left;
    const Across across{left, whole / (end + kBehind), end};
    OneKey(painter, across, 0, m_piano->armsOf(KeyColour::natural), KeyColour::natural, look).paint();
    OneKey(painter, across, units(kKeyRow), m_piano->armsOf(KeyColour::sharp), KeyColour::sharp, look).paint();
}

} // namespace hammerline
