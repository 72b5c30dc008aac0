// How the entry at the bench is painted: fixed places, so that the eye learns them.
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/widgets/hint_bar.h"
#include "ui/widgets/look.h"
#include "ui/widgets/marks.h"
#include "ui/words/how_to.h"
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

/// Number and pitch of one size, the number bold: at three metres either is enough.
void BenchEntry::paintNoteBlock(QPainter& painter, const Look& look) const {
    const Piano& piano = *m_bench.piano();
    const QString number = QString::number(m_bench.note().value), pitch = words::pitch(m_bench.note(), piano);
    double size = 112;
    const auto wide = [&] {
        return noteWidth(number, sized(size, true)) + noteWidth(pitch, sized(size)) + px(size * 0.2);
    };
    while (size > 60 && wide() > px(346))
        size -= 4;
    painter.setPen(ink(look.ink));
    painter.setFont(sized(size, true));
    const double after = paintNote(painter, {px(40), px(148)}, number);
    painter.setFont(sized(size));
    paintNote(painter, {px(40) + after + px(size * 0.2), px(148)}, pitch);
    const auto sections = sectionsOf(piano);
    const std::size_t section = sectionIndexOf(m_bench.note(), piano);
    painter.setFont(sized(30));
    painter.setPen(ink(look.ink2));
    const bool sharp = colourOf(m_bench.note(), piano) == KeyColour::sharp;
    const QString text = tr("%1 \u00B7 %2")
                             .arg(sharp ? tr("sharp") : tr("natural"),
                                  words::sectionName(sections[section], section, sections.size()).toLower());
    painter.drawText(QPointF(px(40), px(194)), elided(text, painter.font(), px(330)));
}

/// What to measure, from where to where, and between which limits.
void BenchEntry::paintTask(QPainter& painter, const Look& look) const {
    const double x = partBox().left(), wide = partBox().width();
    const DimensionId id = m_bench.dimension();
    painter.setFont(sized(46, true));
    painter.setPen(ink(look.ink));
    painter.drawText(QPointF(x, px(90)), elided(words::name(id), painter.font(), wide));
    painter.setPen(ink(look.ink2));
    const QString fromTo = words::howTo(id, m_bench.piano()->action).fromTo;
    painter.setFont(sized(26));
    painter.drawText(QRectF(x, px(99), wide, px(72)), Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap, fromTo);
    painter.setFont(sized(32));
    const auto zone = m_bench.zones().at(m_bench.cell());
    if (!zone) {
        const QString none = id == dimension::strap ? tr("a word, by its key") : tr("no zone in this sheet");
        painter.drawText(QPointF(x, px(200)), none);
        return;
    }
    const QString unit = words::unitName(row(id).kind);
    const QString before = tr("set to "), aim = words::shown(id, zone->nominal);
    painter.drawText(QPointF(x, px(200)), before);
    double at = x + QFontMetricsF(painter.font()).horizontalAdvance(before);
    painter.setFont(sized(32, true));
    painter.setPen(ink(look.ink));
    painter.drawText(QPointF(at, px(200)), aim);
    at += QFontMetricsF(painter.font()).horizontalAdvance(aim);
    painter.setFont(sized(32));
    painter.setPen(ink(look.ink2));
    const QString good =
        zone->low && zone->high
            ? tr(", good from %1 to %2 %3").arg(words::shown(id, *zone->low), words::shown(id, *zone->high), unit)
            : tr(", good %1 %2").arg(words::zoneText(id, *zone), unit);
    painter.drawText(QPointF(at, px(200)), elided(good, painter.font(), x + wide - at));
}

} // namespace hammerline
