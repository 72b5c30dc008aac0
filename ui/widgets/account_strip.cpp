#include "ui/widgets/account_strip.h"

#include "ui/words/account_labels.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kStripNames = 25.5, kStripHigh = 34, kStripFoot = 6, kStripLegend = 8; // units
constexpr double kLeastReach = 0.6;                                                     // mm either way of the aims

/// What the line gives more than its aim would, mm; none where it was not read or has no aim.
std::optional<double> beyondAim(const DipTerm& term) {
    if (!term.share || !term.aimShare) return std::nullopt;
    return *term.share - *term.aimShare;
}

double reachOf(std::span<const NoteAction> actions) {
    double most = kLeastReach;
    for (const NoteAction& action : actions) {
        double up = 0, down = 0;
        for (const DipTerm& term : action.account.terms)
            (beyondAim(term).value_or(0) > 0 ? up : down) += std::abs(beyondAim(term).value_or(0));
        most = std::max({most, up, down});
    }
    return std::ceil(most * 5) / 5;
}

class StripOfAccounts {
public:
    StripOfAccounts(QPainter& painter, const QRectF& box, std::span<const NoteAction> actions, const DrawnStyle& style)
        : m_painter(painter), m_style(style), m_actions(actions), m_reach(reachOf(actions)) {
        m_field = {box.left() + style.u(kStripNames), box.top(), box.width() - style.u(kStripNames + 4),
                   style.u(kStripHigh)};
        m_pitch = m_field.width() / static_cast<double>(actions.size());
    }

    void paint(NoteNumber current, const Piano& piano) {
        m_painter.save();
        m_painter.setRenderHint(QPainter::Antialiasing);
        for (std::size_t i = 0; i < m_actions.size(); ++i) {
            if (m_actions[i].note == current) m_painter.fillRect(column(i), ink(m_style.look.sel));
            paintZone(i);
        }
        paintAxis();
        for (std::size_t i = 0; i < m_actions.size(); ++i)
            paintNoteAt(i, piano);
        paintKey();
        m_painter.restore();
    }

private:
    double y(double mm) const {
        return m_field.center().y() - m_field.height() / 2 * std::clamp(mm / m_reach, -1., 1.);
    }
    QRectF column(std::size_t i) const {
        return {m_field.left() + m_pitch * static_cast<double>(i), m_field.top(), m_pitch, m_field.height()};
    }

    void paintZone(std::size_t i) {
        const DipAccount& account = m_actions[i].account;
        if (!account.zone || !account.atAims) return;
        const auto edge = [&](const std::optional<std::int64_t>& limit, double open) {
            return limit ? toTrade(*limit, Kind::length) - *account.atAims : open;
        };
        const double low = y(edge(account.zone->low, -m_reach)), high = y(edge(account.zone->high, m_reach));
        m_painter.fillRect(QRectF(column(i).left(), high, m_pitch, low - high), zoneColour(m_style));
    }

    void paintAxis() {
        for (const double mm : {-m_reach, 0.0, m_reach}) {
            m_painter.setPen(QPen(ink(mm == 0 ? m_style.look.ink : m_style.look.line), m_style.u(0.3)));
            m_painter.drawLine(QPointF(m_field.left(), y(mm)), QPointF(m_field.right(), y(mm)));
            m_painter.setPen(ink(m_style.look.ink2));
            const QString text = mm == 0 ? words::stripAims() : words::stripFigure(mm);
            drawnText(m_painter, m_style, m_style.plain, {m_field.left() - m_style.u(1.5), y(mm) + m_style.u(1)}, text,
                      Qt::AlignRight);
        }
    }

    void fill(const QRectF& box, std::size_t term) {
        QPainterPath outline;
        outline.addRect(box);
        const Look& look = m_style.look;
        m_painter.fillRect(box, ink(term == 0 ? look.ink : term == 3 ? look.felt : look.paper));
        if (term == 1) drawnHatch(m_painter, m_style, outline, ink(look.ink2));
        m_painter.setPen(inkPen(m_style, 0.25));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(box);
    }

    /// Of a grand, which has no lost motion, the places of the fills stay.
    static std::size_t placeOf(DimensionId id) {
        return id == dimension::keyDip ? 0 : id == dimension::lostMotion ? 1 : id == dimension::letOff ? 2 : 3;
    }

    void paintNoteAt(std::size_t i, const Piano& piano) {
        const DipAccount& account = m_actions[i].account;
        const double inset = std::min(m_style.u(0.5), m_pitch * 0.15);
        const QRectF whole = column(i).adjusted(inset, 0, -inset, 0);
        double up = 0, down = 0;
        for (const DipTerm& term : account.terms) {
            const auto beyond = beyondAim(term);
            if (!beyond || std::abs(*beyond) < 0.005) continue;
            double& from = *beyond > 0 ? up : down;
            const double top = std::max(from, from + *beyond), bottom = std::min(from, from + *beyond);
            fill({whole.left(), y(top), whole.width(), y(bottom) - y(top)}, placeOf(term.dimension));
            from += *beyond;
        }
        if (account.computed && account.atAims) { // what is left, over all of it
            const double at = y(*account.computed - *account.atAims), thick = m_style.u(0.9);
            m_painter.fillRect(QRectF(column(i).left(), at - thick / 2, m_pitch, thick), ink(m_style.look.paper));
            m_painter.fillRect(QRectF(column(i).left(), at - thick / 3, m_pitch, thick * 2 / 3),
                               ink(m_style.look.ring));
        }
        const int note = m_actions[i].note.value;
        const bool named = i == 0 || i + 1 == m_actions.size() || note % 5 == 0;
        const double wide = drawnWidth(m_style.plain, QString::number(note));
        const bool crowded = m_named && column(i).center().x() - wide / 2 < *m_named;
        if (!named || crowded || !piano.contains(m_actions[i].note)) return;
        m_painter.setPen(ink(m_style.look.ink2));
        drawnText(m_painter, m_style, m_style.plain, {column(i).center().x(), m_field.bottom() + m_style.u(4.6)},
                  QString::number(note), Qt::AlignHCenter);
        m_named = column(i).center().x() + wide / 2 + m_style.u(1.5);
    }

    void paintKey() {
        double left = m_field.left();
        const double top = m_field.bottom() + m_style.u(kStripFoot + 2), wide = m_style.u(5), high = m_style.u(2.6);
        for (std::size_t term = 0; term < 4; ++term) {
            const bool any = std::ranges::any_of(m_actions, [&](const NoteAction& action) {
                return std::ranges::any_of(action.account.terms,
                                           [&](const DipTerm& each) { return placeOf(each.dimension) == term; });
            });
            if (!any) continue;
            fill({left, top, wide, high}, term);
            left = say(left + wide, top + high, words::stripTerm(term));
        }
        m_painter.fillRect(QRectF(left, top + high / 2 - m_style.u(0.3), wide, m_style.u(0.6)), ink(m_style.look.ring));
        say(left + wide, top + high, words::stripLeft());
    }

    double say(double left, double base, const QString& text) {
        m_painter.setPen(ink(m_style.look.ink2));
        drawnText(m_painter, m_style, m_style.plain, {left + m_style.u(1.5), base - m_style.u(0.2)}, text);
        return left + m_style.u(6) + drawnWidth(m_style.plain, text);
    }

    QPainter& m_painter;
    const DrawnStyle& m_style;
    std::span<const NoteAction> m_actions;
    double m_reach = 1, m_pitch = 1;
    QRectF m_field;
    std::optional<double> m_named; // right end of the last number
};

} // namespace

double accountStripHeight(const DrawnStyle& style) {
    return style.u(kStripHigh + kStripFoot + kStripLegend);
}

void paintAccountStrip(QPainter& painter, const QRectF& box, std::span<const NoteAction> actions, NoteNumber current,
                       const Piano& piano, const DrawnStyle& style) {
    if (actions.empty()) return;
    StripOfAccounts(painter, box, actions, style).paint(current, piano);
}

} // namespace hammerline
