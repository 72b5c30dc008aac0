// The field of the entry at the bench: verdict, rule, and what stands there while a question or a refusal waits.
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/widgets/look.h"
#include "ui/widgets/marks.h"
#include "ui/widgets/stroke_distance.h"
#include "ui/words/words.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

std::optional<Judged> BenchEntry::judgedNow() const {
    if (!m_field->text().isEmpty()) return m_meaning.judged;
    const PassView* view = m_repeat ? nullptr : m_bench.view();
    const Judged* stored = view ? view->review.at(m_bench.cell()) : nullptr;
    return stored ? std::optional(*stored) : std::nullopt;
}

std::optional<double> BenchEntry::valueNow() const {
    const Kind kind = row(m_bench.dimension()).kind;
    if (!m_field->text().isEmpty()) {
        if (!m_meaning.judged || !m_meaning.judged->value) return {};
        return toTrade(*m_meaning.judged->value, kind);
    }
    const auto stored = judgedNow();
    return stored && stored->value ? std::optional(toTrade(*stored->value, kind)) : std::nullopt;
}

void BenchEntry::paintFieldBox(QPainter& painter, const Look& look) const {
    const QRectF box = fieldBox();
    using Meaning = Understanding::Kind;
    const bool refused = m_asking && m_meaning.kind == Meaning::refused;
    painter.setBrush(ink(look.paper));
    painter.setPen(QPen(ink(refused ? look.fault : look.ring), px(5)));
    painter.drawRoundedRect(box, px(4), px(4));
    painter.setFont(sized(44));
    painter.setPen(ink(look.ink2));
    const QString unit = words::unitName(m_bench.unitOf(m_bench.dimension()));
    painter.drawText(QRectF(box.right() - px(120), box.top(), px(104), box.height()).translated(0, px(24)),
                     Qt::AlignCenter, unit);
    if (m_repeat) {
        const Measured* measured = m_bench.pass() ? m_bench.pass()->at(m_bench.cell()) : nullptr;
        painter.setFont(sized(26, true));
        painter.drawText(QRectF(box.right() - px(126), box.top() + px(14), px(112), px(36)), Qt::AlignCenter,
                         tr("again %1").arg(measured ? measured->trials.size() + 1 : 2));
    } else if (m_field->text().isEmpty() && !m_field->placeholderText().isEmpty()) {
        painter.setFont(sized(24));
        painter.drawText(QRectF(box.right() - px(126), box.top() + px(14), px(112), px(36)), Qt::AlignCenter,
                         tr("stored"));
    }
    const QRectF plate(box.left() + px(24), box.top() + px(24), px(200), box.height() - px(48));
    if (m_asking) {
        const QRectF sign(plate.center().x() - px(52), plate.center().y() - px(46), px(104), px(92));
        if (refused) {
            paintWarning(painter, sign, ink(look.fault), ink(look.paper));
        } else {
            painter.setFont(sized(120, true));
            painter.setPen(ink(look.ink));
            painter.drawText(plate, Qt::AlignCenter, QStringLiteral("?"));
        }
        return;
    }
    paintVerdict(painter, look, plate);
}

/// The trade's word large, its marks above, the deviation small below; within is said without colour.
void BenchEntry::paintVerdict(QPainter& painter, const Look& look, const QRectF& plate) const {
    const auto judged = judgedNow();
    if (!judged || judged->verdict == Verdict::missing) return;
    const int marks = judged->marks();
    const bool high = judged->verdict == Verdict::high;
    const RampStop& stop = look.stop(marks, high);
    if (marks > 0) {
        painter.setPen(QPen(ink(look.edge), 1));
        painter.setBrush(ink(stop.fill));
        painter.drawRoundedRect(plate, px(4), px(4));
        const double size = px(30);
        paintTriangles(painter, plate.center().x() - triangleWidth(marks, size) / 2, plate.top() + px(32), marks, high,
                       ink(stop.text), size);
    } else if (judged->verdict == Verdict::undecided) {
        painter.setPen(QPen(ink(look.ink2), px(2.5), Qt::DashLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(plate, px(4), px(4));
    }
    const QString word = verdictWords(*judged);
    double size = 42;
    while (size > 22 && QFontMetricsF(sized(size, true)).horizontalAdvance(word) > plate.width() - px(16))
        size -= 2;
    painter.setFont(sized(size, true));
    painter.setPen(ink(marks > 0 ? stop.text : look.ink));
    painter.drawText(plate.adjusted(0, marks > 0 ? px(30) : -px(14), 0, marks > 0 ? -px(26) : -px(14)), Qt::AlignCenter,
                     word);
    painter.setFont(sized(28));
    const QString side = judged->word     ? QString()
                         : marks > 0      ? (high ? tr("high") : tr("low"))
                         : judged->uneven ? tr("uneven")
                                          : QString();
    QStringList below;
    if (!side.isEmpty()) below << side;
    if (const QString excess = excessText(*judged, m_bench.zones().at(m_bench.cell())); !excess.isEmpty()) {
        below = {excess}; // the word above says the side
        double small = 28;
        while (small > 14 && QFontMetricsF(sized(small)).horizontalAdvance(excess) > plate.width() - px(8))
            small -= 1;
        painter.setFont(sized(small));
    }
    painter.drawText(plate.adjusted(0, plate.height() - px(52), 0, -px(8)), Qt::AlignCenter,
                     below.join(QStringLiteral(", ")));
}

/// The distance itself between its two parts, the zone in it as a slip of paper; what was typed in another unit is said
/// above it.
void BenchEntry::paintRule(QPainter& painter, const Look& look) const {
    const QRectF place(px(50), px(390), width() - px(100), px(132));
    const bool said = m_meaning.kind == Understanding::Kind::sound;
    if (said) {
        painter.setFont(sized(22));
        painter.setPen(ink(look.ink2));
        painter.drawText(QRectF(px(52), px(366), px(404) * m_wide, px(28)), Qt::AlignLeft | Qt::AlignVCenter,
                         QStringLiteral("= ") + m_meaning.headline);
    }
    const auto zone = m_bench.zones().at(m_bench.cell());
    if (!zone) return;
    const DimensionId id = m_bench.dimension();
    const DrawnStyle style{
        .look = look, .plain = sized(28), .bold = sized(32, true), .strong = sized(46, true), .unit = px(4)};
    DistancePicture picture{.id = id, .zone = *zone, .value = valueNow(), .judged = judgedNow(), .figure = {}};
    if (picture.value) picture.figure = words::shown(id, fromTrade(*picture.value, row(id).kind));
    paintDistance(painter, place, picture, style);
}

/// A doubtful or refused text: one bold sentence, and the one key of each answer.
void BenchEntry::paintAsking(QPainter& painter, const Look& look) const {
    using Meaning = Understanding::Kind;
    const bool refused = !m_asking || m_meaning.kind == Meaning::refused;
    const QString headline = m_asking ? m_meaning.headline : m_notice;
    const QRectF box(px(50), px(394), width() - px(100), px(124));
    painter.setPen(QPen(ink(refused ? look.fault : look.ring), px(2.5)));
    painter.setBrush(ink(refused ? look.faultBg : look.paper));
    painter.drawRoundedRect(box, px(4), px(4));
    const QRectF inner = box.adjusted(px(20), px(8), -px(20), -px(8));
    double size = 30;
    const auto needed = [&] {
        return QFontMetricsF(sized(size, true))
            .boundingRect(QRectF(0, 0, inner.width(), 10'000), Qt::TextWordWrap, headline)
            .height();
    };
    while (size > 18 && needed() > px(72))
        size -= 1;
    painter.setFont(sized(size, true));
    painter.setPen(ink(look.ink));
    painter.drawText(inner, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, headline);
    if (!m_asking) return;
    QStringList answers;
    if (!refused && !m_meaning.suggestion.isEmpty()) answers << tr("Enter: %1").arg(m_meaning.suggestion);
    if (!refused && m_meaning.reading) answers << tr("F9: as typed, %1").arg(m_field->text().trimmed());
    answers << tr("or type it again");
    painter.setFont(sized(27));
    painter.drawText(
        inner, Qt::AlignLeft | Qt::AlignBottom,
        elided(refused ? m_meaning.more : answers.join(QStringLiteral("     ")), painter.font(), inner.width()));
}

} // namespace hammerline
