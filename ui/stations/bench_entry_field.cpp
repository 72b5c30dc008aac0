// The field of the entry at the bench: verdict, rule, and what stands there while a question or a refusal waits.
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/widgets/look.h"
#include "ui/widgets/marks.h"
#include "ui/words/words.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

/// 1, 2 or 5 times a power of ten, so that some eight to sixteen ticks fill the span.
double tickStep(double span) {
    const double raw = span / 12, power = std::pow(10, std::floor(std::log10(raw)));
    const double lead = raw / power;
    return (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10) * power;
}

} // namespace

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
    if (const QString deviation = deviationText(*judged); !deviation.isEmpty()) below << deviation;
    painter.drawText(plate.adjusted(0, plate.height() - px(52), 0, -px(8)), Qt::AlignCenter,
                     below.join(QStringLiteral(", ")));
}

/// A rule with the zone, a pointer at the value and what is beyond the zone; the value in both units below its end.
void BenchEntry::paintRule(QPainter& painter, const Look& look) const {
    const double left = px(110), right = width() - px(110), y = px(459);
    const auto zone = m_bench.zones().at(m_bench.cell());
    if (m_meaning.kind == Understanding::Kind::sound) {
        painter.setFont(sized(26));
        painter.setPen(ink(look.ink2));
        painter.drawText(QRectF(left, y + px(22), right - left, px(36)), Qt::AlignLeft | Qt::AlignVCenter,
                         QStringLiteral("= ") + m_meaning.headline);
    }
    if (!zone) return;
    const DimensionId id = m_bench.dimension();
    const Kind kind = row(id).kind;
    const double aim = toTrade(zone->nominal, kind);
    const double lowSide = zone->low ? aim - toTrade(*zone->low, kind) : 0;
    const double highSide = zone->high ? toTrade(*zone->high, kind) - aim : 0;
    const double half = std::max({lowSide, highSide, 0.1});
    const double from = aim - half * 2.6, to = aim + half * 2.6;
    const auto at = [&](double v) { return left + (std::clamp(v, from, to) - from) / (to - from) * (right - left); };
    painter.setPen(QPen(ink(look.edge), px(2)));
    painter.drawLine(QPointF(left, y), QPointF(right, y));
    const QRectF band(QPointF(zone->low ? at(aim - lowSide) : left, y - px(17)),
                      QPointF(zone->high ? at(aim + highSide) : right, y + px(17)));
    painter.setBrush(ink(look.zone));
    painter.drawRect(band);
    painter.setPen(QPen(ink(look.edge), px(1.5)));
    const double step = tickStep(to - from);
    for (double tick = std::ceil(from / step) * step; tick <= to; tick += step) {
        const bool large = std::abs(std::remainder(tick, step * 5)) < step / 10;
        painter.drawLine(QPointF(at(tick), y - px(large ? 10 : 5)), QPointF(at(tick), y + px(large ? 10 : 5)));
    }
    painter.setPen(QPen(ink(look.ink), px(3)));
    painter.drawLine(QPointF(at(aim), band.top() - px(6)), QPointF(at(aim), band.bottom() + px(6)));
    painter.setFont(sized(28));
    painter.setPen(ink(look.ink2));
    const auto label = [&](std::int64_t count) {
        painter.drawText(QRectF(at(toTrade(count, kind)) - px(90), y + px(22), px(180), px(36)), Qt::AlignCenter,
                         words::shown(id, count));
    };
    if (zone->low && lowSide > half * 0.3) label(*zone->low);
    label(zone->nominal);
    if (zone->high && highSide > half * 0.3) label(*zone->high);
    const auto value = valueNow();
    if (!value) return;
    const double x = at(*value);
    if (const auto judged = judgedNow(); judged && judged->marks() > 0 && !judged->word) {
        const bool high = judged->verdict == Verdict::high;
        const double edge = high ? band.right() : band.left();
        painter.setPen(QPen(ink(look.ink), px(1.5)));
        painter.setBrush(ink(look.stop(judged->marks(), high).fill));
        painter.drawRect(QRectF(QPointF(std::min(edge, x), y - px(10)), QPointF(std::max(edge, x), y + px(10))));
    }
    painter.fillRect(QRectF(x - px(3), y - px(32), px(6), px(58)), ink(look.ink));
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink(look.ink));
    painter.drawPolygon(
        QPolygonF{{QPointF(x - px(15), y - px(46)), QPointF(x + px(15), y - px(46)), QPointF(x, y - px(24))}});
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
