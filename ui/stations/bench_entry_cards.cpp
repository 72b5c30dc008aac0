// The three cards of the entry at the bench: last, this note before, next.
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/widgets/look.h"
#include "ui/widgets/marks.h"
#include "ui/words/words.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

void BenchEntry::paintCard(QPainter& painter, const Look& look, const QRectF& card, const QString& title,
                           const QString& value, const Judged* judged, const QString& more) const {
    painter.setPen(QPen(ink(look.line), px(1.5)));
    painter.setBrush(ink(look.paper));
    painter.drawRect(card);
    painter.setFont(sized(26));
    painter.setPen(ink(look.ink2));
    painter.drawText(QPointF(card.left() + px(20), card.top() + px(36)),
                     elided(title, painter.font(), card.width() - px(40)));
    const double base = card.top() + px(92);
    painter.setFont(sized(46, true));
    painter.setPen(ink(look.ink));
    double x = card.left() + px(20);
    x += paintNote(painter, {x, base}, value) + px(18);
    if (judged && judged->marks() > 0)
        x = paintTriangles(painter, x, base - px(10), judged->marks(), judged->verdict == Verdict::high, ink(look.ink2),
                           px(17)) +
            px(12);
    painter.setFont(sized(27));
    painter.setPen(ink(look.ink2));
    painter.drawText(QPointF(x, base), elided(more, painter.font(), card.right() - px(12) - x));
}

/// What was last stored, what this note read before (or should now), and where the hand goes next.
void BenchEntry::paintCards(QPainter& painter, const Look& look) const {
    const Piano& piano = *m_bench.piano();
    const double top = px(536), h = px(108), gap = px(16), w = (width() - px(80) - 2 * gap) / 3;
    const auto place = [&](int i) { return QRectF(px(40) + i * (w + gap), top, w, h); };
    const PassView* view = m_bench.view();
    const Judged* last = m_last && view ? view->review.at(*m_last) : nullptr;
    const auto shownOf = [](const Judged& judged) {
        return judged.word    ? words::name(*judged.word)
               : judged.value ? words::shown(judged.cell.dimension, *judged.value)
                              : QString(QChar(0x2013));
    };
    if (last)
        paintCard(painter, look, place(0),
                  tr("Last: %1, note %2").arg(words::pitch(m_last->note, piano)).arg(m_last->note.value),
                  shownOf(*last), last, last->word ? words::name(m_last->dimension) : verdictWords(*last));
    else
        paintCard(painter, look, place(0), tr("Last"), QString(QChar(0x2013)), nullptr, tr("nothing yet"));

    const auto expected = expectedAfterPlan(m_bench, m_bench.cell());
    // the last pass that read this cell, which need not be the one just before
    int earlier = m_bench.passNumber() - 1;
    const Judged* before = nullptr;
    for (; earlier > 0; --earlier) {
        before = m_bench.judged(earlier, m_bench.cell());
        if (before && (before->value || before->word)) break;
        before = nullptr;
    }
    if (expected)
        paintCard(painter, look, place(1), tr("Expected after the plan"),
                  words::shown(m_bench.dimension(), fromTrade(expected->value, row(m_bench.dimension()).kind)), nullptr,
                  before ? tr("was %1").arg(shownOf(*before)) : QString());
    else if (before)
        paintCard(painter, look, place(1), tr("This note in pass %1").arg(earlier), shownOf(*before), before,
                  before->word ? QString() : verdictWords(*before));
    else
        paintCard(painter, look, place(1), tr("This note before"), QString(QChar(0x2013)), nullptr, tr("not measured"));

    if (const auto coming = next())
        paintCard(painter, look, place(2), tr("Next: Enter"), words::pitch(coming->note, piano), nullptr,
                  tr("note %1, %2").arg(coming->note.value).arg(words::name(coming->dimension).toLower()));
    else
        paintCard(painter, look, place(2), tr("Next"), QString(QChar(0x2013)), nullptr, tr("end of this order"));
}

} // namespace hammerline
