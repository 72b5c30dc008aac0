#include "ui/piano/key_drawing.h"

#include "core/operation/operation.h"
#include "ui/piano/arm_field.h"
#include "ui/widgets/action_sketch.h"

#include <QLocale>

namespace hammerline {

namespace {

constexpr double kKeyRow = 34;       // units a key takes, with its two lines of distances
constexpr double kBehind = 12;       // mm of wood behind the back rail's contact
constexpr double kHigh = 8.5;        // units from a key's row down to its upper side
constexpr double kThick = 3;         // units of wood
constexpr double kLines[] = {8, 15}; // units from the key's bottom down to the middle of each line of distances
constexpr std::array kLetters = {"F", "P", "T", "C"};
constexpr std::array kLineOf = {1, 0, 1, 0}; // of the two, by arm

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
        for (std::size_t arm = 0; arm < kArms.size(); ++arm)
            distance(arm);
    }
    /// The middle of an arm's dimension line.
    QPointF middleOf(std::size_t arm) const {
        const auto [from, to] = endsOf(arm);
        return {(m_across.at(from) + m_across.at(to)) / 2, low() + units(kLines[kLineOf[arm]])};
    }

private:
    double high() const { return m_top + units(kHigh); } // the key's upper side
    double low() const { return high() + units(kThick); }
    /// Before the balance pin lie F and P, behind it T and C.
    std::pair<double, double> endsOf(std::size_t arm) const {
        const double mm = (m_arms.*kArms[arm]).mm();
        const bool before = arm < 2;
        return before ? std::pair(m_balance - mm, m_balance) : std::pair(m_balance, m_balance + mm);
    }
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
        m_painter.setFont(m_arms.anyMeasured() ? face(Text::label) : expectedFace(Text::label));
        pen(m_look.ink2, 1);
        const QString said = m_arms.anyMeasured() ? KeyDrawing::tr("measured; italic: as customary")
                                                  : KeyDrawing::tr("customary, until you measure one");
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

    /// A line of the two below the key, with witness marks at both ends; its field stands in the middle.
    void distance(std::size_t arm) const {
        const auto [from, to] = endsOf(arm);
        const double y = middleOf(arm).y(), a = m_across.at(from), b = m_across.at(to);
        pen(m_look.ink, 1.3);
        m_painter.drawLine(QPointF(a, y - units(1)), QPointF(a, y + units(1)));
        m_painter.drawLine(QPointF(b, y - units(1)), QPointF(b, y + units(1)));
        m_painter.drawLine(QPointF(a, y), QPointF(b, y));
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

/// Both keys as they stand in the widget, painted or only looked at.
template <class Do>
void eachKey(QPainter& painter, const QWidget& widget, const Piano& piano, Do&& act) {
    double end = 0;
    for (const KeyArms& arms : piano.arms)
        end = std::max(end, arms.F() + arms.T());
    const double left = units(3), whole = widget.width() - 2 * left;
    const Across across{left, whole / (end + kBehind), end};
    const Look& look = lookOf(widget);
    for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp}) {
        const double top = colour == KeyColour::sharp ? units(kKeyRow) : 0;
        act(OneKey(painter, across, top, piano.armsOf(colour), colour, look), colour);
    }
}

QString spokenArm(KeyColour colour, std::size_t arm) {
    static const std::array names = {QT_TRANSLATE_NOOP("hammerline::KeyDrawing", "front edge (F)"),
                                     QT_TRANSLATE_NOOP("hammerline::KeyDrawing", "front pin (P)"),
                                     QT_TRANSLATE_NOOP("hammerline::KeyDrawing", "back rail (T)"),
                                     QT_TRANSLATE_NOOP("hammerline::KeyDrawing", "capstan (C)")};
    const QString key = colour == KeyColour::natural ? KeyDrawing::tr("Natural") : KeyDrawing::tr("Sharp");
    return KeyDrawing::tr("%1, balance pin to %2, mm").arg(key, KeyDrawing::tr(names[arm]));
}

} // namespace

KeyDrawing::KeyDrawing(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Key arms"));
    constexpr std::array<std::size_t, 4> kOrder = {1, 3, 0, 2}; // by Tab, as they stand: P, C, F, T
    for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp})
        for (const std::size_t arm : kOrder)
            m_fields[static_cast<std::size_t>(colour)][arm] =
                new ArmField(QLatin1String(kLetters[arm]), spokenArm(colour, arm), this);
}

QLineEdit* KeyDrawing::field(KeyColour colour, std::size_t arm) const {
    return m_fields[static_cast<std::size_t>(colour)][arm];
}

void KeyDrawing::resizeEvent(QResizeEvent*) {
    placeFields();
}

void KeyDrawing::placeFields() {
    if (!m_piano) return;
    QPainter nobody;
    eachKey(nobody, *this, *m_piano, [this](const OneKey& key, KeyColour colour) {
        for (std::size_t arm = 0; arm < kArms.size(); ++arm) {
            const QSize size = ArmField::size();
            const QPointF middle = key.middleOf(arm);
            field(colour, arm)->move(qRound(middle.x() - size.width() / 2.0), qRound(middle.y() - size.height() / 2.0));
        }
    });
}

QSize KeyDrawing::sizeHint() const {
    return {u(50), u(2 * kKeyRow + 1)};
}

void KeyDrawing::setPiano(const Piano& piano) {
    m_piano = piano;
    setAccessibleDescription(spoken(piano.armsOf(KeyColour::natural), tr("Natural")) + QLatin1String("; ") +
                             spoken(piano.armsOf(KeyColour::sharp), tr("Sharp")));
    placeFields();
    update();
}

void KeyDrawing::paintEvent(QPaintEvent*) {
    if (!m_piano) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    eachKey(painter, *this, *m_piano, [](OneKey key, KeyColour) { key.paint(); });
}

} // namespace hammerline
