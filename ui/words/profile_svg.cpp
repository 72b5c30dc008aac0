#include "ui/words/profile_svg.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

#include <algorithm>

namespace hammerline::words {
namespace {

constexpr double kWide = 800, kHigh = 170, kLeft = 58, kRight = 12, kTop = 12, kBottom = 26; // units of the drawing
constexpr int kLeastRead = 3;
constexpr double kMark = 3.4;

struct ProfilePoint {
    int note = 0;
    double value = 0; // trade units
    Verdict verdict = Verdict::within;
};

std::vector<ProfilePoint> pointsOf(const PassView& view, DimensionId id) {
    std::vector<ProfilePoint> points;
    for (const Judged& judged : view.review.ranked)
        if (judged.cell.dimension == id && judged.value)
            points.push_back({judged.cell.note.value, toTrade(*judged.value, row(id).kind), judged.verdict});
    std::ranges::sort(points, {}, &ProfilePoint::note);
    return points;
}

/// Where a value and a note stand in the drawing.
struct ProfileScale {
    double low = 0, high = 1;
    int notes = 88;
    double x(double note) const { return kLeft + (note - 0.5) / notes * (kWide - kLeft - kRight); }
    double y(double value) const { return kTop + (high - value) / (high - low) * (kHigh - kTop - kBottom); }
};

ProfileScale scaleOf(const PassView& view, DimensionId id, const std::vector<ProfilePoint>& points,
                     const Piano& piano) {
    const auto [least, most] = std::ranges::minmax(points, {}, &ProfilePoint::value);
    ProfileScale scale{least.value, most.value, piano.notes};
    for (const auto& [cell, zone] : view.review.zones) {
        if (cell.dimension != id) continue;
        for (const auto& edge : {zone.low, zone.high})
            if (edge) {
                scale.low = std::min(scale.low, toTrade(*edge, row(id).kind));
                scale.high = std::max(scale.high, toTrade(*edge, row(id).kind));
            }
    }
    const double room = std::max(0.05 * (scale.high - scale.low), 0.05);
    scale.low -= room;
    scale.high += room;
    return scale;
}

QString figure(double value) {
    return QString::number(value, 'f', 1);
}

/// One thin bar a note: zones may differ from note to note.
QString zoneBars(const PassView& view, DimensionId id, const ProfileScale& scale) {
    QString bars;
    for (const auto& [cell, zone] : view.review.zones) {
        if (cell.dimension != id) continue;
        const double top = zone.high ? scale.y(toTrade(*zone.high, row(id).kind)) : kTop;
        const double bottom = zone.low ? scale.y(toTrade(*zone.low, row(id).kind)) : kHigh - kBottom;
        const double left = scale.x(cell.note.value - 0.5), right = scale.x(cell.note.value + 0.5);
        bars += QStringLiteral("<rect x=\"%1\" y=\"%2\" width=\"%3\" height=\"%4\"/>")
                    .arg(figure(left), figure(top), figure(right - left + 0.1), figure(std::max(0.5, bottom - top)));
    }
    return QStringLiteral("<g fill=\"currentColor\" fill-opacity=\"0.13\">%1</g>").arg(bars);
}

QString markOf(const ProfilePoint& point, const ProfileScale& scale) {
    const double x = scale.x(point.note), y = scale.y(point.value);
    const bool out = point.verdict == Verdict::low || point.verdict == Verdict::high;
    if (!out) return QStringLiteral("<circle cx=\"%1\" cy=\"%2\" r=\"2.4\"/>").arg(figure(x), figure(y));
    const double tip = point.verdict == Verdict::high ? -kMark : kMark;
    return QStringLiteral("<path d=\"M%1 %2L%3 %4L%5 %4Z\"/>")
        .arg(figure(x), figure(y + tip), figure(x - kMark), figure(y - tip), figure(x + kMark));
}

QString textAt(double x, double y, const char* anchor, const QString& text) {
    return QStringLiteral("<text x=\"%1\" y=\"%2\" text-anchor=\"%3\">%4</text>")
        .arg(figure(x), figure(y), QLatin1String(anchor), text.toHtmlEscaped());
}

} // namespace

QString profileSvg(const PassView& view, DimensionId id, const Piano& piano) {
    const std::vector<ProfilePoint> points = pointsOf(view, id);
    if (static_cast<int>(points.size()) < kLeastRead) return {};
    const ProfileScale scale = scaleOf(view, id, points, piano);
    QString marks, texts;
    for (const ProfilePoint& point : points)
        marks += markOf(point, scale);
    const auto [least, most] = std::ranges::minmax(points, {}, &ProfilePoint::value);
    texts += textAt(kLeft - 6, scale.y(most.value) + 4, "end", number(most.value, 2));
    const bool apart = scale.y(least.value) - scale.y(most.value) > 14;
    if (apart) texts += textAt(kLeft - 6, scale.y(least.value) + 4, "end", number(least.value, 2));
    for (int note = 1; note <= piano.notes; note += note == 1 ? 9 : 10)
        texts += textAt(scale.x(note), kHigh - 8, "middle", QString::number(note));
    return QStringLiteral("<svg viewBox=\"0 0 %1 %2\" role=\"img\" aria-label=\"%3\">%4<g fill=\"currentColor\">%5</g>"
                          "<g fill=\"currentColor\" font-size=\"13\">%6</g></svg>\n")
        .arg(kWide)
        .arg(kHigh)
        .arg(name(id).toHtmlEscaped(), zoneBars(view, id, scale), marks, texts);
}

} // namespace hammerline::words
