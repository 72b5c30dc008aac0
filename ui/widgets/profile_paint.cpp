// How the profile of a dimension is painted: zones, the run of the readings, what is out and the worst by name.
#include "ui/widgets/marks.h"
#include "ui/widgets/profile.h"
#include "ui/words/words.h"

#include <QPainter>

#include <algorithm>

namespace hammerline {

namespace {
constexpr int kMedianReach = 2; // notes either side
constexpr std::size_t kLabelled = 5;
constexpr double kTriangle = 1.7; // units
} // namespace

void Profile::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), ink(look.paper));
    if (m_axis.notes() == 0) return;
    for (const NoteAxis::Gap& gap : m_axis.gaps())
        painter.fillRect(QRect(gap.first, 0, gap.last - gap.first, height()), ink(look.head));
    paintCurrent(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paintScale(painter);
    paintZones(painter);
    paintBefore(painter);
    paintMedian(painter);
    paintPoints(painter);
    paintWords(painter);
    paintLabels(painter);
    if (hasFocus()) paintRing(painter, QRectF(rect()), look, true);
}

void Profile::paintCurrent(QPainter& painter) const {
    const NoteNumber n = m_bench.note();
    if (n.value > m_axis.notes()) return;
    const Look& look = lookOf(*this);
    painter.fillRect(QRect(m_axis.left(n), 0, m_axis.width(n), height()), ink(look.sel));
    painter.fillRect(QRectF(m_axis.centre(n) - 0.75, 0, 1.5, height()), ink(look.ink));
}

void Profile::paintScale(QPainter& painter) const {
    const Look& look = lookOf(*this);
    painter.setFont(face(Text::label));
    const QFontMetricsF metrics(painter.font());
    for (double value = m_scale.first(); value <= m_scale.high; value += m_scale.step) {
        const double at = std::round(y(value)) + 0.5;
        painter.setPen(QPen(ink(look.line), 1));
        painter.drawLine(QPointF(m_axis.begin() - u(1.5), at), QPointF(m_axis.end(), at));
        const QString text = words::shown(m_bench.dimension(), fromTrade(value, row(m_bench.dimension()).kind));
        if (at < metrics.height() / 2 || at > height() - metrics.height() / 2) continue;
        painter.setPen(ink(look.ink2));
        painter.drawText(
            QPointF(m_axis.begin() - u(2.5) - metrics.horizontalAdvance(text), at + metrics.capHeight() / 2), text);
    }
}

/// The zone at a note. A dimension of one key colour has none at the other's keys between: there the band goes on as
/// at the key beside, so that it reads as one band and not as stripes.
const Zone* Profile::zoneHere(const PassView& shown, NoteNumber note) const {
    const auto& zones = shown.review.zones;
    if (const auto found = zones.find({note, m_bench.dimension()}); found != zones.end()) return &found->second;
    const auto lower = zones.find({{note.value - 1}, m_bench.dimension()});
    for (const int by : {1, 2}) {
        const auto upper = zones.find({{note.value + by}, m_bench.dimension()});
        if (upper != zones.end() && (lower != zones.end() || zones.contains({{note.value - 2}, m_bench.dimension()})))
            return lower != zones.end() ? &lower->second : &upper->second;
    }
    return nullptr;
}

void Profile::paintZones(QPainter& painter) const {
    const Look& look = lookOf(*this);
    const PassView* shown = view();
    const Kind kind = row(m_bench.dimension()).kind;
    painter.setRenderHint(QPainter::Antialiasing, false);
    for (int n = 1; n <= m_axis.notes(); ++n) {
        const Zone* found = zoneHere(*shown, {n});
        if (!found) continue;
        const Zone& zone = *found;
        const double top = zone.high ? std::round(y(toTrade(*zone.high, kind))) : 0;
        const double bottom = zone.low ? std::round(y(toTrade(*zone.low, kind))) : height();
        const double l = m_axis.left({n}), r = m_axis.right({n});
        if (n != m_bench.note().value) painter.fillRect(QRectF(l, top, r - l, bottom - top), ink(look.zone));
        painter.setPen(QPen(ink(look.edge), 1.2));
        if (zone.high) painter.drawLine(QPointF(l, top), QPointF(r, top));
        if (zone.low) painter.drawLine(QPointF(l, bottom), QPointF(r, bottom));
        QPen aim(ink(look.edge), 1);
        aim.setDashPattern({4, 3});
        aim.setDashOffset(l);
        painter.setPen(aim);
        const double at = std::round(y(toTrade(zone.nominal, kind)));
        painter.drawLine(QPointF(l, at), QPointF(r, at));
    }
    painter.setRenderHint(QPainter::Antialiasing);
}

void Profile::paintBefore(QPainter& painter) const {
    const PassView* before = m_before > 0 ? m_bench.view(m_before) : nullptr;
    if (!before) return;
    const Kind kind = row(m_bench.dimension()).kind;
    painter.setPen(QPen(ink(lookOf(*this).ink3), 1.4));
    for (int n = 1; n <= m_axis.notes(); ++n)
        if (const auto value = before->pass.value({{n}, m_bench.dimension()})) {
            const double at = y(toTrade(*value, kind));
            painter.drawLine(QPointF(m_axis.left({n}) + 1, at), QPointF(m_axis.right({n}) - 2, at));
        }
}

void Profile::paintMedian(QPainter& painter) const {
    painter.setPen(QPen(ink(lookOf(*this).ink), 1.8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    for (const NoteRange& section : m_axis.sections()) {
        QPolygonF line;
        for (const Point& point : m_points) {
            if (!section.contains(point.note)) continue;
            std::vector<double> near;
            for (const Point& other : m_points)
                if (section.contains(other.note) && std::abs(other.note.value - point.note.value) <= kMedianReach)
                    near.push_back(other.value);
            if (near.size() < 3) continue; // single samples make no run
            const auto middle = near.begin() + static_cast<std::ptrdiff_t>(near.size() / 2);
            std::nth_element(near.begin(), middle, near.end());
            line << QPointF(m_axis.centre(point.note), y(*middle));
        }
        painter.drawPolyline(line);
    }
}

void Profile::paintPoints(QPainter& painter) const {
    const Look& look = lookOf(*this);
    const QColor line = ink(look.ink), paper = ink(look.paper);
    const double radius = units(0.7);
    for (const Point& point : m_points) {
        const QPointF at(m_axis.centre(point.note), y(point.value));
        const Verdict verdict = point.judged->verdict;
        if (verdict == Verdict::low || verdict == Verdict::high) {
            paintOut(painter, point, std::clamp(at.y(), units(kTriangle), height() - units(kTriangle)));
        } else if (verdict == Verdict::undecided) {
            painter.setPen(QPen(line, 1.4));
            painter.setBrush(paper);
            const double d = radius * 1.5;
            painter.drawPolygon(
                QPolygonF{{at + QPointF(0, -d), at + QPointF(d, 0), at + QPointF(0, d), at + QPointF(-d, 0)}});
        } else {
            painter.setPen(QPen(line, 1.2));
            painter.setBrush(point.sharp ? line : paper);
            painter.drawEllipse(at, radius, radius);
        }
    }
}

/// A triangle in the ramp's colour that points the way the reading is out.
void Profile::paintOut(QPainter& painter, const Point& point, double at) const {
    const Look& look = lookOf(*this);
    const bool up = point.judged->verdict == Verdict::high;
    const double size = units(kTriangle), x = m_axis.centre(point.note), h = size * 0.85 * (up ? 1 : -1);
    painter.setPen(QPen(ink(look.ink), 1));
    painter.setBrush(ink(look.stop(std::max(1, point.judged->marks()), up).fill));
    painter.drawPolygon(QPolygonF{{QPointF(x - size, at + h), QPointF(x + size, at + h), QPointF(x, at - h)}});
}

void Profile::paintWords(QPainter& painter) const {
    const double size = units(kTriangle) * 1.3;
    for (const Point& point : m_words)
        if (row(*point.judged->word).marks != 0)
            paintOut(painter, point, point.judged->verdict == Verdict::high ? size : height() - size);
}

void Profile::paintLabels(QPainter& painter) const {
    const Look& look = lookOf(*this);
    std::vector<Point> worst = m_words;
    std::erase_if(worst, [](const Point& p) { return row(*p.judged->word).marks == 0; });
    std::vector<Point> out;
    for (const Point& point : m_points)
        if (point.judged->verdict == Verdict::low || point.judged->verdict == Verdict::high) out.push_back(point);
    std::ranges::stable_sort(out, std::greater{}, [](const Point& p) {
        return p.judged->infinite ? 1e9 : std::abs(p.judged->deviation.value_or(0));
    });
    worst.insert(worst.end(), out.begin(), out.end());
    painter.setFont(face(Text::label, true));
    const QFontMetricsF metrics(painter.font());
    std::vector<QRectF> taken;
    for (std::size_t i = 0; i < std::min(kLabelled, worst.size()); ++i) {
        const Point& point = worst[i];
        const Judged& judged = *point.judged;
        const QString text =
            words::noteName(point.note, *m_bench.piano()) + QLatin1Char(' ') +
            (judged.word ? words::name(*judged.word) : words::shown(judged.cell.dimension, *judged.value));
        const double width = noteWidth(text, painter.font());
        const bool up = judged.verdict == Verdict::high;
        const double middle = judged.word ? (up ? units(2.2) : height() - units(2.2))
                                          : std::clamp(y(point.value), units(2), height() - units(2));
        const double x = m_axis.centre(point.note);
        const QRectF after(x + units(2.7), middle - metrics.height() / 2, width, metrics.height());
        const QRectF before(x - units(2.7) - width, after.top(), width, after.height());
        const auto free = [&](const QRectF& r) {
            const bool inGap = std::ranges::any_of(
                m_axis.gaps(), [&](const NoteAxis::Gap& g) { return r.right() > g.first && r.left() < g.last; });
            return !inGap && r.left() >= m_axis.begin() && r.right() <= this->width() &&
                   std::ranges::none_of(taken, [&](const QRectF& t) { return t.intersects(r); });
        };
        const QRectF* place = free(after) ? &after : free(before) ? &before : nullptr;
        if (!place) continue;
        taken.push_back(*place);
        painter.fillRect(place->adjusted(-units(0.5), units(0.2), units(0.5), -units(0.2)), ink(look.paper));
        painter.setPen(ink(look.ink));
        paintNote(painter, {place->left(), middle + metrics.capHeight() / 2}, text);
    }
}

} // namespace hammerline
