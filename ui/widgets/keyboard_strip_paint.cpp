// How the keyboard strip is painted: keys, bars above and below them, marks on the keys, the current note.
#include "ui/widgets/keyboard_strip.h"
#include "ui/widgets/marks.h"
#include "ui/words/words.h"

namespace hammerline {

namespace {
constexpr std::array<double, 4> kBarHeights{0, 1.75, 3.5, 5.25}; // units: 7, 14, 21 px
constexpr double kBarGap = 1, kSharpLength = 0.6;
} // namespace

QPixmap KeyboardStrip::drawnKeys() const {
    const Look& look = lookOf(*this);
    const double ratio = devicePixelRatioF();
    const QRect keys = keysRect();
    QPixmap map((QSizeF(keys.width() + 2, keys.height() + 2) * ratio).toSize());
    map.setDevicePixelRatio(ratio);
    map.fill(Qt::transparent);
    QPainter painter(&map);
    painter.translate(-keys.left() + 0.5, -keys.top() + 0.5);
    const QPen edge(ink(look.edge), 1);
    const double bottom = keys.top() + keys.height(),
                 sharpBottom = keys.top() + std::round(keys.height() * kSharpLength);
    painter.setPen(edge);
    painter.setBrush(ink(look.naturalTop));
    for (const NoteRange& part : m_axis.sections()) {
        const double l = m_axis.left({part.first}), r = m_axis.right({part.last});
        painter.drawRect(QRectF(l, keys.top(), r - l, keys.height()));
    }
    const Piano& piano = *m_bench.piano();
    painter.setBrush(ink(look.sharpTop));
    for (int n = 1; n <= m_axis.notes(); ++n) {
        const bool sharp = colourOf({n}, piano) == KeyColour::sharp;
        const double l = m_axis.left({n}), r = m_axis.right({n});
        if (sharp) {
            painter.setPen(edge);
            painter.drawLine(QPointF(std::floor((l + r) / 2), sharpBottom), QPointF(std::floor((l + r) / 2), bottom));
            painter.setPen(themeOf(palette()) == Theme::dark ? edge : QPen(ink(look.sharpTop), 1));
            painter.drawRect(QRectF(l, keys.top(), r - l, sharpBottom - keys.top()));
        } else if (n < m_axis.notes() && colourOf({n + 1}, piano) == KeyColour::natural && m_axis.left({n + 1}) == r) {
            painter.setPen(edge);
            painter.drawLine(QPointF(r, keys.top()), QPointF(r, bottom));
        }
    }
    return map;
}

void KeyboardStrip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), ink(look.bench));
    painter.fillRect(QRect(0, 0, width(), 1), ink(look.line));
    if (m_axis.notes() == 0) return;
    if (m_keys.isNull()) m_keys = drawnKeys();
    painter.drawPixmap(QPointF(keysRect().topLeft()), m_keys);
    paintLegend(painter);
    paintLabels(painter);
    paintBars(painter);
    paintKeyMarks(painter);
    if (m_tool) m_tool->paint(painter, look, m_axis, keysRect());
    paintCurrent(painter);
}

void KeyboardStrip::paintLegend(QPainter& painter) const {
    const Look& look = lookOf(*this);
    QStringList lines = m_marks.legend;
    if (lines.isEmpty()) {
        lines << (m_marks.dimension ? words::name(*m_marks.dimension) : tr("Worst reading"));
        lines << (m_marks.dimension ? tr("above: %1").arg(words::sideName(*m_marks.dimension, true))
                                    : tr("above: too high"));
        lines << (m_marks.dimension ? tr("below: %1").arg(words::sideName(*m_marks.dimension, false))
                                    : tr("below: too low"));
    }
    const int left = u(4), line = u(3.5);
    int y = keysRect().top() + u(1);
    for (qsizetype i = 0; i < lines.size(); ++i) {
        const QFont font = face(Text::tiny, i == 0);
        painter.setFont(font);
        painter.setPen(ink(i == 0 ? look.ink : look.ink2));
        const QString text = QFontMetrics(font).elidedText(lines[i], Qt::ElideRight, m_axis.begin() - left - u(1));
        painter.drawText(QPoint(left, y), text);
        y += line;
    }
}

void KeyboardStrip::paintLabels(QPainter& painter) const {
    const Look& look = lookOf(*this);
    const Piano& piano = *m_bench.piano();
    painter.setFont(face(Text::tiny));
    painter.setPen(ink(look.ink2));
    const QFontMetrics metrics(painter.font());
    int free = 0;
    const auto label = [&](NoteNumber n) {
        const QString text = words::pitch(n, piano);
        const int at = qRound(m_axis.centre(n)) - metrics.horizontalAdvance(text) / 2;
        if (at < free) return;
        paintNote(painter, QPointF(at, u(2.75)), text);
        free = at + metrics.horizontalAdvance(text) + u(1);
    };
    for (int n = 1; n <= piano.notes; ++n)
        if (n == 1 || midiOf({n}, piano) % 12 == 0) label({n});
    const auto sections = sectionsOf(piano);
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const QString name = words::sectionName(sections[i], i, sections.size());
        const QString range = QStringLiteral("%1\u2013%2").arg(sections[i].range.first).arg(sections[i].range.last);
        const int l = m_axis.left({sections[i].range.first}), r = m_axis.right({sections[i].range.last});
        painter.drawText(QPoint(l, u(26.25)), metrics.elidedText(name + u' ' + range, Qt::ElideRight, r - l));
    }
}

QRectF KeyboardStrip::barRect(NoteNumber n, int marks) const {
    const double h = units(kBarHeights[static_cast<std::size_t>(std::min(3, std::abs(marks)))]);
    const double w = std::max(4.0, m_axis.width(n) - units(1));
    const double x = std::floor(m_axis.centre(n) - w / 2) + 0.5;
    const QRect keys = keysRect();
    return marks > 0 ? QRectF(x, keys.top() - u(kBarGap) - h + 0.5, w, h)
                     : QRectF(x, keys.bottom() + 1 + u(kBarGap) + 0.5, w, h);
}

void KeyboardStrip::paintBars(QPainter& painter) const {
    const Look& look = lookOf(*this);
    painter.setPen(QPen(ink(look.ink), 0.8));
    for (int n = 1; n <= m_axis.notes(); ++n) {
        const int marks = m_bars[static_cast<std::size_t>(n)].marks;
        if (marks == 0) continue;
        painter.setBrush(ink(look.stop(std::min(3, std::abs(marks)), marks > 0).fill));
        painter.drawRect(barRect({n}, marks));
    }
    painter.setBrush(Qt::NoBrush);
    for (const auto& [n, marks] : m_marks.expected)
        if (marks != 0 && n >= 1 && n <= m_axis.notes()) painter.drawRect(barRect({n}, marks));
    for (const NoteNumber n : m_marks.named)
        if (n.value >= 1 && n.value <= m_axis.notes()) painter.fillRect(barRect(n, 1), ink(look.ink));
}

void KeyboardStrip::paintKeyMarks(QPainter& painter) const {
    const QRect keys = keysRect();
    const double size = units(1.75), tick = std::min(size, 0.75 * m_axis.width({1})); // ticks stay clear of each other
    const QColor dark = ink(lookOf(*this).sharpTop), paper = ink(lookOf(*this).naturalTop);
    for (int n = 1; n <= m_axis.notes(); ++n) {
        const Bar& bar = m_bars[static_cast<std::size_t>(n)];
        const auto mark = m_marks.keys.find(n);
        if (!bar.mendFirst && !bar.uneven && mark == m_marks.keys.end()) continue;
        const QRectF box(std::round(m_axis.centre({n}) - size / 2), keys.bottom() - size - units(0.4), size, size);
        if (bar.mendFirst) {
            painter.fillRect(box.adjusted(-1, -1, 1, 1), paper);
            paintNotch(painter, box, dark, paper);
        } else if (mark != m_marks.keys.end()) {
            painter.fillRect(box.adjusted(-1, -1, 1, 1), paper);
            if (mark->second == StripMarks::KeyMark::faulty)
                painter.fillRect(box, dark);
            else
                paintTick(painter, QRectF(box.center() - QPointF(tick, tick) / 2, QSizeF(tick, tick)), dark);
        } else {
            paintStep(painter, box.left(), box.center().y(), dark, size * 0.8);
        }
    }
}

void KeyboardStrip::paintCurrent(QPainter& painter) const {
    const NoteNumber n = m_bench.note();
    if (n.value > m_axis.notes()) return;
    const Look& look = lookOf(*this);
    const QRect keys = keysRect();
    const bool sharp = colourOf(n, *m_bench.piano()) == KeyColour::sharp;
    const double bottom = sharp ? keys.top() + keys.height() * kSharpLength : keys.top() + keys.height();
    paintRing(painter,
              QRectF(m_axis.left(n), keys.top(), m_axis.width(n), bottom - keys.top()).adjusted(0.5, 0, 0.5, 0), look);
    const int marks = m_bars[static_cast<std::size_t>(n.value)].marks;
    const double tip = marks > 0 ? barRect(n, marks).top() - units(0.5) : keys.top() - units(1.5);
    paintTriangles(painter, m_axis.centre(n) - units(1.5), tip - units(1.2), 1, false, ink(look.ink), units(3));
}

} // namespace hammerline
