#include "ui/widgets/stroke_columns.h"

#include "ui/widgets/marks.h"
#include "ui/words/stroke_labels.h"
#include "ui/words/words.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr std::size_t kNamed = 5;     // the worst by name
constexpr double kNamesBelow = 0.9;   // mm under the bottoms, for the names of what is out there
constexpr double kLastOfWay = 4;      // mm
constexpr double kColumnTriangle = 2; // units
constexpr double kScaleRoom = 1.5;    // units between figures of the scale and the first note

/// One column's mark that is out: where, which way, how far.
struct OutMark {
    double x = 0, y = 0;
    bool up = false;
    double excess = 0; // in half widths of its zone
    NoteNumber note{};
    DimensionId dimension{};
};

/// Bands of zones as one note has them.
struct ColumnBands {
    const StrokeBand* band;
    DimensionId id;
};

double excessOf(const StrokeBand& band, double mm) {
    const double low = band.low.value_or(mm), high = band.high.value_or(mm);
    const double beyond = std::max(low - mm, mm - high);
    const double half = band.low && band.high ? std::max(0.05, (*band.high - *band.low) / 2) : 0.5;
    return beyond / half;
}

class Columns {
public:
    Columns(QPainter& painter, const QRectF& box, const StrokeAxis& axis, std::span<const NoteAction> actions,
            const Piano& piano, const StrokeColumns& how, const DrawnStyle& style)
        : m_painter(painter), m_box(box), m_axis(axis), m_actions(actions), m_piano(piano), m_how(how), m_style(style) {
        for (const NoteAction& each : actions) {
            m_most = std::max(m_most, strokeOfNote(each).bottom.value_or(0));
            m_most = std::max(m_most, strokeOfNote(each).letOff.value_or(0));
        }
        m_most = std::ceil(m_most * 2 + 0.5) / 2 + (how.nameWorst ? kNamesBelow * (how.lastOfWay ? 0.4 : 1) : 0);
        if (how.lastOfWay) m_least = m_most - kLastOfWay;
    }

    void paint() {
        m_painter.save();
        m_painter.setRenderHint(QPainter::Antialiasing, false);
        paintCurrentColumn();
        for (const NoteAction& each : m_actions)
            if (wanted(each.note)) paintColumnZones(each);
        paintScaleLines();
        for (const NoteAction& each : m_actions)
            if (wanted(each.note)) paintColumn(each);
        m_painter.setRenderHint(QPainter::Antialiasing);
        for (const OutMark& mark : m_out)
            paintOutMark(mark);
        if (m_how.nameWorst) nameWorst();
        m_painter.restore();
    }

private:
    const Stroke& strokeOfNote(const NoteAction& action) const {
        return m_how.afterPlan && action.strokeAfter ? *action.strokeAfter : action.stroke;
    }
    const DipAccount& accountOfNote(const NoteAction& action) const {
        return m_how.afterPlan && action.accountAfter ? *action.accountAfter : action.account;
    }
    bool wanted(NoteNumber note) const {
        if (m_how.keys == StrokeKeys::all) return true;
        const bool sharp = colourOf(note, m_piano) == KeyColour::sharp;
        return sharp == (m_how.keys == StrokeKeys::sharps);
    }
    double y(double mm) const {
        const double share = (mm - m_least) / (m_most - m_least);
        return m_box.top() + m_box.height() * std::clamp(share, 0.0, 1.0);
    }
    std::pair<double, double> column(NoteNumber note) const {
        return m_axis.columns.at(static_cast<std::size_t>(note.value) - 1);
    }

    void paintCurrentColumn() {
        if (!m_how.current) return;
        const auto [left, right] = column(*m_how.current);
        m_painter.fillRect(QRectF(left, m_box.top(), right - left, m_box.height()), ink(m_style.look.sel));
    }

    void paintColumnZones(const NoteAction& action) {
        const auto [left, right] = column(action.note);
        const bool here = m_how.current && *m_how.current == action.note;
        for (const auto& band : {action.zones.moves, action.zones.damperStirs, action.zones.letOff}) {
            if (!band) continue;
            const double top = y(band->low.value_or(m_least)), bottom = y(band->high.value_or(m_most));
            if (!here) m_painter.fillRect(QRectF(left, top, right - left, bottom - top), zoneColour(m_style));
        }
    }

    void paintScaleLines() {
        const double step = m_how.lastOfWay ? 1 : 5;
        m_painter.setFont(m_style.plain);
        for (double mm = std::ceil(m_least / step) * step; mm <= m_most; mm += step) {
            const double at = std::round(y(mm)) + 0.5;
            m_painter.setPen(QPen(ink(m_style.look.line), m_style.u(0.25)));
            m_painter.drawLine(QPointF(m_axis.left - m_style.u(1), at), QPointF(m_axis.right, at));
            if (mm == 0) continue; // the key at rest, said by the legend
            m_painter.setPen(ink(m_style.look.ink2));
            drawnText(m_painter, m_style, m_style.plain, {m_axis.left - m_style.u(kScaleRoom), at + m_style.u(1)},
                      QString::number(mm), Qt::AlignRight);
        }
    }

    void paintColumn(const NoteAction& action) {
        const Stroke& stroke = strokeOfNote(action);
        const auto [left, right] = column(action.note);
        const double wide = right - left, middle = (left + right) / 2;
        const double inset = std::max(wide * 0.12, m_style.u(0.12));
        const double end = std::max(stroke.bottom.value_or(0), stroke.letOff.value_or(0));
        m_painter.setPen(QPen(ink(m_style.look.edge), m_style.u(0.25)));
        if (end > m_least) m_painter.drawLine(QPointF(middle, y(m_least)), QPointF(middle, y(end)));
        if (stroke.moves && *stroke.moves > m_least)
            m_painter.fillRect(QRectF(left + inset, y(m_least), wide - 2 * inset, y(*stroke.moves) - y(m_least)),
                               ink(m_style.look.ink));
        look(action, dimension::lostMotion, action.zones.moves, stroke.moves);
        if (stroke.damperStirs && *stroke.damperStirs > m_least) {
            const double thick = m_style.u(0.6);
            m_painter.fillRect(QRectF(left, y(*stroke.damperStirs) - thick / 2, wide, thick), ink(m_style.look.ink));
            look(action, dimension::damperStart, action.zones.damperStirs, stroke.damperStirs);
        }
        paintBox(action, stroke, left + inset, wide - 2 * inset);
    }

    void paintBox(const NoteAction& action, const Stroke& stroke, double left, double wide) {
        if (!stroke.letOff || !stroke.bottom) return;
        const double top = y(std::min(*stroke.letOff, *stroke.bottom));
        const double bottom = y(std::max(*stroke.letOff, *stroke.bottom));
        const QRectF box(left, top, wide, std::max(bottom - top, m_style.u(0.5)));
        const auto judged = judgedLeft(accountOfNote(action));
        const bool high = judged && judged->verdict == Verdict::high;
        const int marks = judged ? judged->marks() : 0;
        m_painter.fillRect(box, ink(m_style.look.stop(marks, high).fill));
        m_painter.setPen(QPen(ink(m_style.look.ink), m_style.u(0.3)));
        m_painter.drawRect(box);
        if (!stroke.jackEscapes()) // crossed out: there is none
            m_painter.drawLine(box.topLeft(), box.bottomRight());
        if (judged && marks > 0) {
            const double excess = std::abs(judged->deviation.value_or(9)) - 1;
            m_out.push_back(
                {left + wide / 2, high ? box.top() : box.bottom(), high, excess, action.note, dimension::aftertouch});
        }
    }

    void look(const NoteAction& action, DimensionId id, const std::optional<StrokeBand>& band,
              const std::optional<double>& at) {
        if (!band || !at) return;
        const double excess = excessOf(*band, *at);
        if (excess <= 1e-9) return;
        const bool up = *at < band->low.value_or(*at);
        const auto [left, right] = column(action.note);
        m_out.push_back({(left + right) / 2, y(*at), up, excess, action.note, id});
    }

    /// Beside its mark, pointing the way it is out.
    void paintOutMark(const OutMark& mark) const {
        const double size =
            std::min(m_style.u(kColumnTriangle), 1.2 * (column(mark.note).second - column(mark.note).first));
        const double off = m_style.u(0.8) + size / 2;
        const double at = mark.up ? mark.y - off : mark.y + off;
        const bool inside = at > m_box.top() && at < m_box.bottom() + size;
        if (!inside) return;
        paintTriangles(m_painter, mark.x - size / 2, at, 1, mark.up, ink(m_style.look.ink), size);
    }

    void nameWorst() {
        std::vector<OutMark> worst = m_out;
        std::ranges::stable_sort(worst, std::greater{}, &OutMark::excess);
        std::vector<QRectF> taken;
        for (std::size_t i = 0; i < worst.size() && taken.size() < kNamed; ++i)
            nameOne(worst[i], taken);
    }

    void nameOne(const OutMark& mark, std::vector<QRectF>& taken) {
        const QString text = words::strokeOutName(mark.note, mark.dimension, m_piano);
        const double wide = drawnWidth(m_style.bold, text), high = m_style.u(4.4), off = m_style.u(2);
        const double beyond = mark.up ? -m_style.u(2) : m_style.u(2);
        const double beside = mark.y - high / 2 + beyond;
        const bool atBottom = mark.dimension == dimension::aftertouch;
        const double top = atBottom ? m_box.bottom() - high : std::clamp(beside, m_box.top(), m_box.bottom() - high);
        for (const double left : {mark.x + off, mark.x - off - wide}) {
            const QRectF place(left, top, wide, high);
            const bool inside = left >= m_axis.left && place.right() <= m_axis.right;
            const bool apart = std::ranges::none_of(
                taken, [&](const QRectF& t) { return t.adjusted(-off, 0, off, 0).intersects(place); });
            if (!inside || !apart) continue;
            taken.push_back(place);
            QColor ground = ink(m_style.look.paper);
            ground.setAlphaF(0.86F);
            m_painter.fillRect(place.adjusted(-m_style.u(0.5), 0, m_style.u(0.5), 0), ground);
            m_painter.setPen(ink(m_style.look.ink));
            drawnText(m_painter, m_style, m_style.bold, {left, place.bottom() - m_style.u(1.1)}, text);
            return;
        }
    }

    QPainter& m_painter;
    QRectF m_box;
    const StrokeAxis& m_axis;
    std::span<const NoteAction> m_actions;
    const Piano& m_piano;
    const StrokeColumns& m_how;
    const DrawnStyle& m_style;
    double m_least = 0, m_most = 10;
    std::vector<OutMark> m_out;
};

} // namespace

StrokeAxis StrokeAxis::of(const NoteAxis& axis) {
    StrokeAxis out;
    out.left = axis.begin();
    out.right = axis.end();
    for (int n = 1; n <= axis.notes(); ++n)
        out.columns.emplace_back(axis.left({n}), axis.right({n}));
    return out;
}

StrokeAxis StrokeAxis::across(double left, double right, double gap, const Piano& piano) {
    StrokeAxis out;
    out.left = left;
    out.right = right;
    const auto sections = sectionsOf(piano);
    const double gaps = gap * static_cast<double>(sections.size() - 1);
    const double pitch = (right - left - gaps) / piano.notes;
    double x = left;
    for (int n = 1; n <= piano.notes; ++n) {
        out.columns.emplace_back(x, x + pitch);
        x += pitch;
        const bool endsSection = std::ranges::any_of(sections, [&](const Section& s) { return s.range.last == n; });
        if (endsSection) x += gap;
    }
    return out;
}

void paintStrokeColumns(QPainter& painter, const QRectF& box, const StrokeAxis& axis,
                        std::span<const NoteAction> actions, const Piano& piano, const StrokeColumns& how,
                        const DrawnStyle& style) {
    if (actions.empty()) return;
    Columns(painter, box, axis, actions, piano, how, style).paint();
}

} // namespace hammerline
