#include "ui/widgets/account_painter.h"

#include "ui/widgets/marks.h"
#include "ui/words/account_labels.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kNameRoom = 57, kScaleHigh = 8, kRowHigh = 19.5, kLegendHigh = 8; // units
constexpr double kBarTop = 2, kBarHigh = 6.6, kPlanTop = 11.2, kPlanHigh = 4.6;

/// Where one line's bar begins and ends, mm of the key.
struct AccountBar {
    double from = 0, to = 0;
    bool gives() const { return to >= from; }
    double low() const { return std::min(from, to); }
    double high() const { return std::max(from, to); }
};

/// Bars of the lines, one after the other; a line that is not read ends them.
std::vector<std::optional<AccountBar>> barsOf(const DipAccount& account) {
    std::vector<std::optional<AccountBar>> out;
    std::optional<double> sum = 0.0;
    for (const DipTerm& term : account.terms) {
        if (!sum || !term.share) {
            sum.reset();
            out.emplace_back();
            continue;
        }
        out.push_back(AccountBar{*sum, *sum + *term.share});
        *sum += *term.share;
    }
    return out;
}

class AccountPicture {
public:
    AccountPicture(QPainter& painter, const QRectF& box, const NoteAction& action, const DrawnStyle& style)
        : m_painter(painter), m_box(box), m_action(action), m_style(style) {
        for (const auto& bar : barsOf(action.account))
            if (bar) reach(bar->low(), bar->high());
        if (action.accountAfter)
            for (const auto& bar : barsOf(*action.accountAfter))
                if (bar) reach(bar->low(), bar->high());
        m_least = std::floor(m_least);
        m_most = std::ceil(m_most);
        m_left = box.left() + style.u(kNameRoom);
        m_right = box.right() - style.u(3);
    }

    void paint() {
        m_painter.save();
        m_painter.setRenderHint(QPainter::Antialiasing);
        paintScale();
        const auto bars = barsOf(m_action.account);
        const auto after = m_action.accountAfter ? barsOf(*m_action.accountAfter) : decltype(bars){};
        for (std::size_t i = 0; i < bars.size(); ++i)
            if (bars[i]) paintConnector(i, bars[i]->to);
        for (std::size_t i = 0; i < bars.size(); ++i) {
            paintName(i, words::accountRow(m_action.account.terms[i], m_action.account.ratio));
            if (bars[i]) paintBar(i, *bars[i]);
            if (!bars[i]) paintUnread(i);
            if (i < after.size() && after[i]) paintAfterBar(i, *after[i]);
        }
        paintLast(bars.size());
        paintLegend(bars.size() + 1);
        m_painter.restore();
    }

private:
    void reach(double low, double high) {
        m_least = std::min(m_least, low);
        m_most = std::max(m_most, high);
    }
    double x(double mm) const { return m_left + (m_right - m_left) * (mm - m_least) / (m_most - m_least); }
    double rowTop(std::size_t i) const {
        return m_box.top() + m_style.u(kScaleHigh + kRowHigh * static_cast<double>(i));
    }
    QRectF barBox(std::size_t i, const AccountBar& bar) const {
        return {x(bar.low()), rowTop(i) + m_style.u(kBarTop), x(bar.high()) - x(bar.low()), m_style.u(kBarHigh)};
    }

    void paintScale() {
        const double bottom = rowTop(m_action.account.terms.size() + 1);
        for (int mm = static_cast<int>(m_least); mm <= m_most; ++mm) {
            m_painter.setPen(QPen(ink(m_style.look.line), m_style.u(mm == 0 ? 0.5 : 0.25)));
            m_painter.drawLine(QPointF(x(mm), m_box.top() + m_style.u(5)), QPointF(x(mm), bottom));
            m_painter.setPen(ink(m_style.look.ink2));
            drawnText(m_painter, m_style, m_style.plain, {x(mm), m_box.top() + m_style.u(3.6)}, words::wholeMm(mm),
                      Qt::AlignHCenter);
        }
        for (std::size_t i = 0; i <= m_action.account.terms.size() + 1; ++i) {
            m_painter.setPen(QPen(ink(m_style.look.line), m_style.u(0.25)));
            m_painter.drawLine(QPointF(m_box.left(), rowTop(i)), QPointF(m_right, rowTop(i)));
        }
    }

    void paintName(std::size_t i, const words::AccountRow& row) {
        const double top = rowTop(i), left = m_box.left();
        m_painter.setPen(ink(m_style.look.ink));
        drawnText(m_painter, m_style, m_style.strong, {left, top + m_style.u(5.2)}, row.name);
        drawnText(m_painter, m_style, m_style.plain, {left, top + m_style.u(10)}, row.read);
        m_painter.setPen(ink(m_style.look.ink2));
        const QString means =
            QFontMetricsF(m_style.plain).elidedText(row.means, Qt::ElideRight, m_style.u(kNameRoom - 2));
        drawnText(m_painter, m_style, m_style.plain, {left, top + m_style.u(14.6)}, means);
    }

    void paintBar(std::size_t i, const AccountBar& bar) {
        const QRectF box = barBox(i, bar);
        QPainterPath outline;
        outline.addRect(box);
        if (bar.gives()) {
            m_painter.fillRect(box, ink(m_style.look.ink));
        } else {
            m_painter.fillRect(box, ink(m_style.look.paper));
            drawnHatch(m_painter, m_style, outline, ink(m_style.look.ink2));
        }
        m_painter.setPen(inkPen(m_style));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(box);
        paintFigure(box, words::shareWords(m_action.account.terms[i], m_action.account.ratio), bar.gives());
    }

    /// In the bar where it has room there, else at its left, else at its right.
    void paintFigure(const QRectF& box, const QString& text, bool onInk) {
        const double wide = drawnWidth(m_style.bold, text), beside = m_style.u(2);
        const double base = box.center().y() + m_style.u(1.3);
        if (wide + m_style.u(4) <= box.width()) {
            const QRectF ground(box.center().x() - wide / 2 - beside, box.top() + m_style.u(0.5), wide + 2 * beside,
                                box.height() - m_style.u(1));
            if (!onInk) m_painter.fillRect(ground, ink(m_style.look.paper));
            m_painter.setPen(ink(onInk ? m_style.look.paper : m_style.look.ink));
            drawnText(m_painter, m_style, m_style.bold, {box.center().x(), base}, text, Qt::AlignHCenter);
            return;
        }
        m_painter.setPen(ink(m_style.look.ink));
        const bool leftHasRoom = box.left() - beside - wide >= m_left;
        const double at = leftHasRoom ? box.left() - beside : box.right() + beside;
        drawnText(m_painter, m_style, m_style.bold, {at, base}, text, leftHasRoom ? Qt::AlignRight : Qt::AlignLeft);
    }

    void paintAfterBar(std::size_t i, const AccountBar& bar) {
        const QRectF box(x(bar.low()), rowTop(i) + m_style.u(kPlanTop), x(bar.high()) - x(bar.low()),
                         m_style.u(kPlanHigh));
        m_painter.setPen(dashedPen(m_style));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(box);
        const QString text = words::shareAfter(m_action.accountAfter->terms[i]);
        const double wide = drawnWidth(m_style.plain, text), base = box.center().y() + m_style.u(1.1);
        m_painter.setPen(ink(m_style.look.ink2));
        const bool inside = wide + m_style.u(3) <= box.width();
        const bool leftHasRoom = box.left() - m_style.u(2) - wide >= m_left;
        const double left = inside        ? box.center().x() - wide / 2
                            : leftHasRoom ? box.left() - m_style.u(2) - wide
                                          : box.right() + m_style.u(2);
        m_painter.fillRect(QRectF(left - m_style.u(0.6), box.top() + m_style.u(0.5), wide + m_style.u(1.2),
                                  box.height() - m_style.u(1)),
                           ink(m_style.look.paper));
        m_painter.setPen(ink(m_style.look.ink2));
        drawnText(m_painter, m_style, m_style.plain, {left, base}, text);
    }

    /// The aim's length in a broken outline: what should stand here, and that it was not read.
    void paintUnread(std::size_t i) {
        const DipTerm& term = m_action.account.terms[i];
        const double length = std::abs(term.aimShare.value_or(1));
        const QRectF box(x(0), rowTop(i) + m_style.u(kBarTop), x(length) - x(0), m_style.u(kBarHigh));
        QPen pen(ink(m_style.look.ink3), m_style.u(0.3), Qt::DotLine);
        m_painter.setPen(pen);
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(box);
        m_painter.setPen(ink(m_style.look.ink2));
        drawnText(m_painter, m_style, m_style.bold, {box.left() + m_style.u(2), box.center().y() + m_style.u(1.3)},
                  words::shareWords(term, m_action.account.ratio));
    }

    void paintConnector(std::size_t i, double mm) {
        QPen pen(ink(m_style.look.ink), m_style.u(0.35));
        pen.setDashPattern({1.5, 2});
        m_painter.setPen(pen);
        const double from = rowTop(i) + m_style.u(kBarTop + kBarHigh);
        m_painter.drawLine(QPointF(x(mm), from), QPointF(x(mm), rowTop(i + 1) + m_style.u(kBarTop)));
    }

    void paintLast(std::size_t i) {
        const DipAccount& account = m_action.account;
        paintName(i, words::accountLastRow(account));
        const double top = rowTop(i), bottom = rowTop(i + 1);
        double beside = x(std::max(0.0, account.computed.value_or(0)));
        if (account.zone) {
            const double low = account.zone->low ? toTrade(*account.zone->low, Kind::length) : 0;
            const double high = account.zone->high ? toTrade(*account.zone->high, Kind::length) : m_most;
            const QRectF strip(x(low), top + m_style.u(0.8), x(high) - x(low), bottom - top - m_style.u(1.6));
            m_painter.fillRect(strip, zoneColour(m_style));
            m_painter.setPen(QPen(ink(m_style.look.edge), m_style.u(0.3)));
            m_painter.drawLine(strip.topLeft(), strip.bottomLeft());
            m_painter.drawLine(strip.topRight(), strip.bottomRight());
            QPen aim(ink(m_style.look.edge), m_style.u(0.3));
            aim.setDashPattern({4, 3});
            m_painter.setPen(aim);
            const double at = x(toTrade(account.zone->nominal, Kind::length));
            m_painter.drawLine(QPointF(at, strip.top()), QPointF(at, strip.bottom()));
            beside = std::max(beside, strip.right());
        }
        if (account.computed) paintLeftBar(i, *account.computed);
        if (m_action.accountAfter && m_action.accountAfter->computed) {
            const AccountBar after{0, *m_action.accountAfter->computed};
            m_painter.setPen(dashedPen(m_style));
            m_painter.setBrush(Qt::NoBrush);
            m_painter.drawRect(QRectF(x(after.low()), top + m_style.u(kPlanTop), x(after.high()) - x(after.low()),
                                      m_style.u(kPlanHigh)));
            beside = std::max(beside, x(after.high()));
        }
        if (account.read) { // what was felt at the note itself
            const double wide = m_style.u(0.8);
            m_painter.fillRect(
                QRectF(x(*account.read) - wide / 2, top + m_style.u(kBarTop - 0.7), wide, m_style.u(kBarHigh + 1.4)),
                ink(m_style.look.ink));
            beside = std::max(beside, x(*account.read));
        }
        m_painter.setPen(ink(m_style.look.ink));
        const double left = beside + m_style.u(2.5);
        drawnText(m_painter, m_style, m_style.strong, {left, top + m_style.u(kBarTop + kBarHigh / 2 + 1.4)},
                  words::aftertouchSentence(account));
        m_painter.setPen(ink(m_style.look.ink2));
        drawnText(m_painter, m_style, m_style.plain, {left, top + m_style.u(kPlanTop + kPlanHigh / 2 + 1.1)},
                  words::leftAfter(m_action));
    }

    void paintLeftBar(std::size_t i, double mm) {
        const AccountBar bar{0, mm};
        const QRectF box = barBox(i, bar);
        const auto judged = judgedLeft(m_action.account);
        const bool high = judged && judged->verdict == Verdict::high;
        const int marks = judged ? judged->marks() : 0;
        const RampStop& stop = m_style.look.stop(marks, high);
        m_painter.fillRect(box, ink(stop.fill));
        m_painter.setPen(inkPen(m_style));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(box);
        const double size = m_style.u(2);
        const double wide = triangleWidth(marks, size);
        if (wide > 0 && wide < box.width() - m_style.u(1))
            paintTriangles(m_painter, box.center().x() - wide / 2, box.center().y(), marks, high, ink(stop.text), size);
    }

    void paintLegend(std::size_t i) {
        double left = m_box.left();
        const double top = rowTop(i) + m_style.u(2.6), wide = m_style.u(6), high = m_style.u(2.6);
        const double base = top + high - m_style.u(0.2);
        const auto say = [&](const QString& text) {
            m_painter.setPen(ink(m_style.look.ink2));
            drawnText(m_painter, m_style, m_style.plain, {left + wide + m_style.u(1.5), base}, text);
            left += wide + drawnWidth(m_style.plain, text) + m_style.u(6);
        };
        const auto sample = [&] { return QRectF(left, top, wide, high); };
        m_painter.setBrush(Qt::NoBrush);
        m_painter.fillRect(sample(), ink(m_style.look.ink));
        say(words::accountLegend(0));
        QPainterPath outline;
        outline.addRect(sample());
        drawnHatch(m_painter, m_style, outline, ink(m_style.look.ink2));
        m_painter.setPen(inkPen(m_style));
        m_painter.drawPath(outline);
        say(words::accountLegend(1));
        if (m_action.accountAfter) {
            m_painter.setPen(dashedPen(m_style));
            m_painter.drawRect(sample());
            say(words::accountLegend(2));
        }
        if (m_action.account.read) {
            m_painter.fillRect(
                QRectF(left + wide - m_style.u(1.5), top - m_style.u(0.6), m_style.u(0.8), high + m_style.u(1.2)),
                ink(m_style.look.ink));
            say(words::accountLegend(3));
        }
    }

    QPainter& m_painter;
    QRectF m_box;
    const NoteAction& m_action;
    const DrawnStyle& m_style;
    double m_left = 0, m_right = 0;
    double m_least = 0, m_most = 11;
};

} // namespace

double accountHeight(const DrawnStyle& style, const NoteAction& action) {
    return style.u(kScaleHigh + kRowHigh * static_cast<double>(action.account.terms.size() + 1) + kLegendHigh);
}

void paintAccount(QPainter& painter, const QRectF& box, const NoteAction& action, const DrawnStyle& style) {
    AccountPicture(painter, box, action, style).paint();
}

} // namespace hammerline
