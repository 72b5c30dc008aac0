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

/// Below the field; in it the word and how far it is over the edge.
QRectF BenchEntry::verdictBox() const {
    const QRectF field = fieldBox();
    return {field.left(), field.bottom() + px(8), field.width() + px(16), px(104)};
}

/// Right of the field, as high as the window leaves it: the part itself.
QRectF BenchEntry::partBox() const {
    const double left = px(414);
    return {left, px(218), width() - px(40) - left, px(300)};
}

void BenchEntry::paintFieldBox(QPainter& painter, const Look& look) const {
    const QRectF box = fieldBox();
    using Meaning = Understanding::Kind;
    const bool refused = m_asking && m_meaning.kind == Meaning::refused;
    painter.setBrush(ink(look.paper));
    painter.setPen(QPen(ink(refused ? look.fault : look.ring), px(5)));
    painter.drawRoundedRect(box, px(4), px(4));
    painter.setPen(ink(look.ink2));
    painter.setFont(sized(28));
    const QRectF line(box.left() + px(18), box.top() + px(8), box.width() - px(36), px(36));
    if (m_bench.dimension() != dimension::strap) // a word has no unit
        painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, words::unitName(m_bench.unitOf(m_bench.dimension())));
    QString state;
    if (m_repeat) {
        const Measured* measured = m_bench.pass() ? m_bench.pass()->at(m_bench.cell()) : nullptr;
        state = tr("again %1").arg(measured ? measured->trials.size() + 1 : 2);
    } else if (m_field->text().isEmpty() && !m_field->placeholderText().isEmpty()) {
        state = tr("stored");
    }
    painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter, state);
    if (!m_asking) return paintVerdict(painter, look, verdictBox());
    const QRectF place = verdictBox();
    if (refused) {
        paintWarning(painter, QRectF(place.left(), place.top(), px(104), px(92)), ink(look.fault), ink(look.paper));
    } else {
        painter.setFont(sized(96, true));
        painter.setPen(ink(look.ink));
        painter.drawText(place, Qt::AlignLeft | Qt::AlignVCenter, QStringLiteral("?"));
    }
}

/// The trade's word large, its marks before it, by how much below; within is said without colour.
void BenchEntry::paintVerdict(QPainter& painter, const Look& look, const QRectF& place) const {
    const auto judged = judgedNow();
    if (judged && judged->verdict != Verdict::missing) {
        const int marks = judged->marks();
        const bool high = judged->verdict == Verdict::high;
        const QString word = verdictWords(*judged);
        const double mark = px(26), beside = marks > 0 ? triangleWidth(marks, mark) + px(10) : 0;
        double size = 56;
        while (size > 26 && QFontMetricsF(sized(size, true)).horizontalAdvance(word) + beside > place.width())
            size -= 2;
        const double base = place.top() + px(50);
        const double middle = base - QFontMetricsF(sized(size, true)).xHeight() / 2;
        if (marks > 0) paintTriangles(painter, place.left(), middle, marks, high, ink(look.ink), mark);
        painter.setFont(sized(size, true));
        painter.setPen(ink(look.ink));
        painter.drawText(QPointF(place.left() + beside, base), elided(word, painter.font(), place.width() - beside));
        QString below = excessText(*judged, m_bench.zones().at(m_bench.cell()));
        if (below.isEmpty() && judged->uneven && !judged->word) below = tr("uneven");
        painter.setFont(sized(28));
        painter.setPen(ink(look.ink2));
        painter.drawText(QPointF(place.left(), base + px(34)), elided(below, painter.font(), place.width()));
    }
    if (m_meaning.kind != Understanding::Kind::sound) return;
    painter.setFont(sized(20)); // what was typed in another unit, as it is understood
    painter.setPen(ink(look.ink2));
    painter.drawText(QPointF(place.left(), place.top() + px(108)),
                     elided(QStringLiteral("= ") + m_meaning.headline, painter.font(), place.width()));
}

/// The distance itself between its two parts, the zone below it as a slip of paper.
void BenchEntry::paintRule(QPainter& painter, const Look& look) const {
    const auto zone = m_bench.zones().at(m_bench.cell());
    if (!zone) return;
    const DimensionId id = m_bench.dimension();
    const DrawnStyle style{
        .look = look, .plain = sized(28), .bold = sized(34, true), .strong = sized(60, true), .unit = px(4)};
    DistancePicture picture{.id = id, .zone = *zone, .value = valueNow(), .judged = judgedNow(), .figure = {}};
    if (picture.value) picture.figure = words::shown(id, fromTrade(*picture.value, row(id).kind));
    paintDistance(painter, partBox(), picture, style);
}

/// A doubtful or refused text: one bold sentence, and the one key of each answer.
void BenchEntry::paintAsking(QPainter& painter, const Look& look) const {
    using Meaning = Understanding::Kind;
    const bool refused = !m_asking || m_meaning.kind == Meaning::refused;
    const QString headline = m_asking ? m_meaning.headline : m_notice;
    const QRectF box = partBox();
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
    while (size > 18 && needed() > box.height() - px(90))
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
