#include "ui/widgets/stroke_labels.h"

#include "ui/words/stroke_labels.h"

#include <algorithm>

namespace hammerline {

namespace {

constexpr double kBeside = 1.8; // units from what it names

double widthOfLabel(const DrawnStyle& style, const words::StrokeLabel& label) {
    return std::max(drawnWidth(style.bold, label.figure), drawnWidth(style.plain, label.means));
}

/// Right of its place, else left of it, else nowhere. What lies between two places of the bar belongs to both.
std::optional<QRectF> roomFor(const DrawnStyle& style, const KeyWay& way, const QRectF& bar,
                              const words::StrokeLabel& label, const std::vector<QRectF>& taken) {
    const double wide = widthOfLabel(style, label), x = way.x(label.at), beside = style.u(kBeside);
    const QRectF right(x + beside, bar.top(), wide, bar.height());
    const QRectF left(x - beside - wide, bar.top(), wide, bar.height());
    const bool leftFirst = label.event == words::StrokeEvent::letOff;
    for (const QRectF& place : {leftFirst ? left : right, leftFirst ? right : left}) {
        const bool inside = place.left() >= way.left && place.right() <= way.right + style.u(3.5);
        const bool apart = std::ranges::none_of(
            taken, [&](const QRectF& t) { return t.adjusted(-style.u(1), 0, style.u(1), 0).intersects(place); });
        if (inside && apart) return place;
    }
    return std::nullopt;
}

} // namespace

void paintStrokeLabels(QPainter& painter, const DrawnStyle& style, const KeyWay& way, const QRectF& bar,
                       const NoteAction& action, const Piano& piano) {
    const auto labels = words::strokeLabels(action, piano);
    std::vector<QRectF> taken;
    for (const words::StrokeLabel& label : labels) { // the marks themselves
        const double half = style.u(label.event == words::StrokeEvent::damperStirs ? 1.9 : 0.4);
        taken.push_back(QRectF(way.x(label.at) - half, bar.top(), 2 * half, bar.height()));
    }
    if (action.stroke.moves)
        taken.push_back(QRectF(way.left, bar.top(), way.x(*action.stroke.moves) - way.left, bar.height()));
    if (action.stroke.letOff && action.stroke.bottom) {
        const double from = way.x(std::min(*action.stroke.letOff, *action.stroke.bottom));
        const double to = way.x(std::max(*action.stroke.letOff, *action.stroke.bottom));
        taken.push_back(QRectF(from, bar.top(), to - from, bar.height()));
    }
    for (std::size_t i = 0; i < labels.size(); ++i) {
        words::StrokeLabel label = labels[i];
        std::vector<QRectF> others = taken;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        auto room = roomFor(style, way, bar, label, others);
        if (!room) { // without by how much, before it is left out
            label.means = label.means.section(QStringLiteral(", "), 0, 0);
            room = roomFor(style, way, bar, label, others);
        }
        if (!room) continue;
        taken.push_back(*room);
        const bool right = room->left() < way.x(label.at);
        const Qt::Alignment align = right ? Qt::AlignRight : Qt::AlignLeft;
        const double x = right ? room->right() : room->left();
        const double halo = style.u(0.6);
        painter.fillRect(room->adjusted(-halo, style.u(0.6), halo, -style.u(0.6)), ink(style.look.paper));
        painter.setPen(ink(style.look.ink));
        drawnText(painter, style, style.bold, {x, bar.top() + style.u(4.2)}, label.figure, align);
        painter.setPen(ink(style.look.ink2));
        drawnText(painter, style, style.plain, {x, bar.top() + style.u(8.4)}, label.means, align);
    }
}

} // namespace hammerline
