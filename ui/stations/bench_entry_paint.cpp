// How the entry at the bench is painted: fixed places, so that the eye learns them.
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/widgets/hint_bar.h"
#include "ui/widgets/look.h"
#include "ui/widgets/marks.h"
#include "ui/words/words.h"

#include <QFontInfo>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace hammerline {

QFont BenchEntry::sized(double design, bool bold) const {
    QFont font = QWidget::font();
    font.setPixelSize(std::max(8, qRound(px(design))));
    font.setBold(bold);
    return font;
}

void BenchEntry::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), ink(look.bench));
    if (!m_bench.piano()) return;
    paintBar(painter, look);
    paintNoteBlock(painter, look);
    paintOctave(painter, look);
    paintTask(painter, look);
    paintFieldBox(painter, look);
    if (m_asking || !m_notice.isEmpty())
        paintAsking(painter, look);
    else
        paintRule(painter, look);
    paintCards(painter, look);
}

/// Piano, pass and order at the left; how far, and the way back, at the right.
void BenchEntry::paintBar(QPainter& painter, const Look& look) const {
    const QRectF bar(0, 0, width(), px(44));
    painter.fillRect(bar, ink(look.rail));
    const double base = bar.center().y() + QFontMetricsF(sized(18)).capHeight() / 2;
    double x = px(24);
    const auto say = [&](const QString& text, bool bold, QRgb colour) {
        painter.setFont(sized(18, bold));
        painter.setPen(ink(colour));
        painter.drawText(QPointF(x, base), text);
        x += painter.fontMetrics().horizontalAdvance(text) + px(22);
    };
    say(elided(QString::fromStdString(m_bench.piano()->name), sized(18, true), width() * 0.36), true, look.railText);
    say(m_bench.pass() ? tr("Pass %1").arg(m_bench.passNumber()) : tr("No pass yet"), false, look.railText);
    say(entryOrderName(m_order), false, look.railText);
    std::size_t here = 0, read = 0;
    for (const Cell cell : m_walk.cells()) {
        if (cell.dimension != m_bench.dimension()) continue;
        ++here;
        const Measured* measured = m_bench.pass() ? m_bench.pass()->at(cell) : nullptr;
        if (measured && !measured->missing()) ++read;
    }
    const QString back = tr("back to the grid"), of = tr("%1 of %2 read").arg(read).arg(here);
    painter.setFont(sized(18));
    double right = width() - px(24) - QFontMetricsF(sized(18)).horizontalAdvance(back);
    painter.setPen(ink(look.railText));
    painter.drawText(QPointF(right, base), back);
    const QFontMetricsF cap(face(Text::tiny, true));
    const double larger = px(14) / QFontInfo(face(Text::tiny, true)).pixelSize(); // as the words beside it
    right -= larger * std::max(units(4), cap.horizontalAdvance(tr("Esc")) + units(2.5)) + px(8);
    painter.save();
    painter.translate(right, bar.center().y());
    painter.scale(larger, larger);
    paintKeyCap(painter, 0, 0, tr("Esc"), look);
    painter.restore();
    painter.setFont(sized(18));
    painter.setPen(ink(look.railText));
    painter.drawText(QPointF(right - px(24) - QFontMetricsF(sized(18)).horizontalAdvance(of), base), of);
}

void BenchEntry::paintNoteBlock(QPainter& painter, const Look& look) const {
    const Piano& piano = *m_bench.piano();
    painter.setFont(sized(132, true));
    painter.setPen(ink(look.ink));
    paintNote(painter, {px(48), px(180)}, words::pitch(m_bench.note(), piano));
    const auto sections = sectionsOf(piano);
    const std::size_t section = sectionIndexOf(m_bench.note(), piano);
    painter.setFont(sized(30));
    painter.setPen(ink(look.ink2));
    const bool sharp = colourOf(m_bench.note(), piano) == KeyColour::sharp;
    const QString text = tr("note %1 \u00B7 %2 \u00B7 %3")
                             .arg(m_bench.note().value)
                             .arg(sharp ? tr("sharp") : tr("natural"),
                                  words::sectionName(sections[section], section, sections.size()).toLower());
    painter.drawText(QPointF(px(50), px(236)), elided(text, painter.font(), px(400) * m_wide));
}

/// The keys around the note, for the hand that looks for it.
void BenchEntry::paintOctave(QPainter& painter, const Look& look) const {
    const Piano& piano = *m_bench.piano();
    constexpr int kKeys = 9;
    const int first = std::clamp(m_bench.note().value - kKeys / 2, 1, std::max(1, piano.notes - kKeys + 1));
    const double w = px(338) / kKeys, top = px(272), h = px(94), sharpH = h * 0.62;
    for (const bool sharps : {false, true})
        for (int i = 0; i < kKeys && first + i <= piano.notes; ++i) {
            const NoteNumber n{first + i};
            const bool sharp = colourOf(n, piano) == KeyColour::sharp;
            if (sharp != sharps) continue;
            const double x = px(52) + i * w;
            painter.setPen(QPen(ink(look.edge), 1));
            if (sharp) {
                painter.setBrush(ink(look.naturalTop));
                painter.drawRect(QRectF(x, top + sharpH, w, h - sharpH));
                painter.setBrush(ink(look.sharpTop));
                painter.drawRect(QRectF(x, top, w, sharpH));
            } else {
                painter.setBrush(ink(look.naturalTop));
                painter.drawRoundedRect(QRectF(x, top, w, h), px(2), px(2));
            }
            if (n == m_bench.note()) {
                const QRectF ring = QRectF(x, top, w, sharp ? sharpH : h).adjusted(px(2), px(2), -px(2), -px(2));
                painter.setBrush(Qt::NoBrush);
                painter.setPen(QPen(ink(look.halo), px(9)));
                painter.drawRoundedRect(ring, px(3), px(3));
                painter.setPen(QPen(ink(look.ring), px(4.5)));
                painter.drawRoundedRect(ring, px(3), px(3));
            }
        }
}

/// What to measure, and between which limits; while a question stands, what to do about it.
void BenchEntry::paintTask(QPainter& painter, const Look& look) const {
    const double x = px(470) * m_wide;
    const DimensionId id = m_bench.dimension();
    painter.setFont(sized(46, true));
    painter.setPen(ink(look.ink));
    painter.drawText(QPointF(x, px(116)), words::name(id));
    painter.setFont(sized(32));
    painter.setPen(ink(look.ink2));
    const auto zone = m_bench.zones().at(m_bench.cell());
    const QString unit = words::unitName(row(id).kind);
    if (!zone) {
        painter.drawText(QPointF(x, px(160)), tr("no zone in this sheet"));
        return;
    }
    QString text = zone->low && zone->high
                       ? tr("%1 to %2 %3").arg(words::shown(id, *zone->low), words::shown(id, *zone->high), unit)
                       : words::zoneText(id, *zone) + u' ' + unit;
    text += tr(", set to ");
    painter.drawText(QPointF(x, px(160)), text);
    const double at = x + QFontMetricsF(painter.font()).horizontalAdvance(text);
    painter.setFont(sized(32, true));
    painter.setPen(ink(look.ink));
    painter.drawText(QPointF(at, px(160)), words::shown(id, zone->nominal));
}

} // namespace hammerline
