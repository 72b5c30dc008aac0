// Paper under the felts of the key's two pins: at the front for the dip, at the balance for the height.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

/// A ring lying flat, seen at a slant from above; `thick` of it, its upper face at `y`.
Shapes ring(Fill fill, double y, double across, double thick) {
    const double high = across * 0.34;
    Points wall;
    const Points edge = oval({0, y}, across, high);
    for (std::size_t i = 8; i <= 16; ++i)
        wall.push_back(edge[i % 16]);
    for (std::size_t i = 16; i + 1 > 8; --i)
        wall.push_back(edge[i % 16] - QPointF(0, thick));
    return {part(fill, wall, 0), curve(fill, edge), curve(Fill::wood, oval({0, y}, across * 0.3, high * 0.3))};
}

Shapes railOf(double half) {
    return {part(Fill::wood, {{-half, -9}, {half, -9}, {half + 14, 11}, {-half + 14, 11}}, 0),
            part(Fill::wood, {{-half, -9}, {half, -9}, {half, -24}, {-half, -24}}, 0),
            thinLine({{-half + 6, -14}, {0, -13}, {half - 6, -15}}, true),
            thinLine({{-half + 10, -19}, {10, -20}, {half - 12, -19}}, true)};
}

Shapes pinOf(double half, double top) {
    return {part(Fill::tool,
                 {{-half, 5}, {half, 5}, {half, top - 3}, {half * 0.5, top}, {-half * 0.5, top}, {-half, top - 3}},
                 1.2)};
}

/// Lower part of a ring that passes before the pin.
Shape before(Fill fill, double y, double across) {
    const Points edge = oval({0, y}, across, across * 0.34), hole = oval({0, y}, across * 0.3, across * 0.1);
    Points out;
    for (std::size_t i = 9; i <= 15; ++i)
        out.push_back(edge[i]);
    for (std::size_t i = 15; i + 1 > 9; --i)
        out.push_back(hole[i]);
    return {.fill = fill, .points = out, .round = 0, .line = Line::hidden};
}

/// Tweezers from the right that hold the edge of a paper at (x, y).
Shapes tweezers(double x, double y) {
    return moved({part(Fill::tool, {{0, 0.4}, {20, 3.5}, {74, 7}, {74, 3.5}, {20, 0.8}}, 0.3),
                  part(Fill::tool, {{0, -0.4}, {20, -3.5}, {74, -7}, {74, -3.5}, {20, -0.8}}, 0.3)},
                 put({x, y}, 14));
}

Scene paperAct(double across, double pin, std::string_view verb, std::string_view pinName) {
    const double papers = 5, fresh = 22, felt = 39;
    return {.world = {-74, -22, 168, 92},
            .shapes = together(
                {railOf(64),
                 ring(Fill::paper, papers, across * 0.9, 0.8),
                 ring(Fill::paper, papers + 1.6, across * 0.9, 0.8),
                 pinOf(pin, 62),
                 {before(Fill::paper, papers + 1.6, across * 0.9)},
                 ring(Fill::paper, fresh, across * 0.9, 0.8),
                 ring(Fill::felt, felt, across, 6),
                 {part(Fill::tool, {{-pin, fresh + 1}, {pin, fresh + 1}, {pin, felt - 11}, {-pin, felt - 11}}, 0),
                  part(Fill::tool,
                       {{-pin, felt}, {pin, felt}, {pin, 59}, {pin * 0.5, 62}, {-pin * 0.5, 62}, {-pin, 59}}, 1.2)},
                 tweezers(across * 0.42, fresh),
                 moved(pinch(), put({68, 36}, -52, 0.62)),
                 moved(pinch(), put({-across * 0.5, felt - 1}, 48, 0.56, true))}),
            .arrows = {{.way = {{-30, 24}, {-30, 8}}}},
            .names = {{.text = "felt-lifted", .part = {-across * 0.4, felt - 3}},
                      {.text = verb, .part = {-30, 24}, .strong = true},
                      {.text = "papers", .part = {-across * 0.36, papers}},
                      {.text = pinName, .part = {pin * 0.6, 56}, .side = Side::right},
                      {.text = "new-paper", .part = {across * 0.3, fresh}, .side = Side::right},
                      {.text = "rail", .part = {60, -12}, .side = Side::right}}};
}

/// Fronts of naturals, side by side; `down`: of the middle one.
Shapes fronts(double down) {
    Shapes out;
    for (const double x : {-24.0, 0.0, 24.0}) {
        const double top = x == 0 ? -down : 0;
        out.push_back(part(Fill::paper, box(x - 11.3, top - 20, x + 11.3, top), 1));
        out.push_back(thinLine({{x - 11.3, top - 3}, {x + 11.3, top - 3}}));
    }
    return out;
}

Scene dipTest() {
    return {.world = {-40, -32, 80, 50},
            .shapes = together({fronts(10.2), {part(Fill::wood, box(-6, -10.2, 9, 0)), thinLine({{-38, 0}, {38, 0}})}}),
            .arrows = {{.way = {{-8.5, 14}, {-8.5, -9.5}}}}};
}

Scene sharpDipTest() {
    return {.world = {-40, -26, 80, 44},
            .shapes = together({fronts(0), {part(Fill::dark, {{-5, -3}, {5, -3}, {4.4, 2.6}, {-4.4, 2.6}}, 1)}}),
            .arrows = {{.way = {{0, 16}, {0, 3}}}}};
}

Scene heightTest() {
    return {.world = {-40, -22, 80, 38},
            .shapes =
                together({fronts(1.4),
                          {part(Fill::tool, box(-39, 0, 39, 8), 0.5), part(Fill::paper, box(-9, -1.3, 9, -0.2), 0)}})};
}

Scene sharpTest() {
    return {
        .world = {-40, -22, 80, 46},
        .shapes = together(
            {fronts(0),
             {part(Fill::dark, {{-17, 0}, {-7, 0}, {-7.6, 12}, {-16.4, 12}}, 1),
              part(Fill::wood, {{-33, 0}, {-22, 0}, {-22, 12}, {-2, 12}, {-2, 0}, {9, 0}, {9, 19}, {-33, 19}}, 0.5)}})};
}

} // namespace

std::vector<Drawing> punchingDrawings() {
    const Scene front = paperAct(27, 2.9, "do-front-paper", "front-pin"),
                balance = paperAct(22, 1.9, "do-balance-paper", "balance-pin");
    return {{.step = "set-dip-naturals", .kinds = "UBDG", .act = front, .test = dipTest()},
            {.step = "set-dip-sharps", .kinds = "UBDG", .act = front, .test = sharpDipTest()},
            {.step = "level-naturals", .kinds = "UBDG", .act = balance, .test = heightTest()},
            {.step = "level-sharps", .kinds = "UBDG", .act = balance, .test = sharpTest()}};
}

} // namespace hammerline::doing
