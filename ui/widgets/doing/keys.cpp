// Keys off: easing a bushing, and the two pins that square and space a key.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

/// Pliers along x, their jaws at the right of 0, the pivot at 0, both handles to the left.
Shapes pliers() {
    return {
        part(Fill::tool,
             {{64, 9},
              {64, 15},
              {16, 15.5},
              {4, 9},
              {-6, -2},
              {-30, -8},
              {-94, -17},
              {-95, -24},
              {-30, -16},
              {-4, -9},
              {8, -1},
              {18, 9}},
             2),
        part(Fill::tool,
             {{64, -9},
              {64, -15},
              {16, -15.5},
              {4, -9},
              {-6, 2},
              {-30, 8},
              {-94, 17},
              {-95, 24},
              {-30, 16},
              {-4, 9},
              {8, 1},
              {18, -9}},
             2),
        curve(Fill::paper, oval({0, 0}, 6, 6)),
    };
}

Scene easeAct() {
    return {.world = {-100, -30, 200, 82},
            .shapes = together(
                {{part(Fill::wood, box(18, -22, 110, 22), 0), thinLine({{22, -14}, {60, -16}, {108, -13}}, true),
                  thinLine({{22, 17}, {60, 16}, {108, 18}}, true),
                  // the hole from below, cloth on both its sides
                  part(Fill::dark, box(34, -9, 66, 9), 3), part(Fill::felt, box(34, 4.5, 66, 9), 1.5),
                  part(Fill::felt, box(34, -9, 66, -4.5), 1.5)},
                 moved(pliers(), put({0, 13.5}, 0)),
                 {part(Fill::felt, box(30, 22, 64, 23.4), 0.5)},
                 moved(fist(), put({-62, 26}, -8, 0.8))}),
            .arrows = {{.way = {{42, 46}, {42, 30}}}, {.way = {{52, -20}, {52, -3}}}},
            .names = {{.text = "do-ease", .part = {42, 46}, .side = Side::right, .strong = true, .level = 44},
                      {.text = "bushing", .part = {65, 6}, .side = Side::right, .level = 12},
                      {.text = "key-below", .part = {92, -16}, .side = Side::right}}};
}

/// The key falls by its own weight.
Scene fallTest() {
    return {.world = {-10, -14, 130, 62},
            .shapes = {part(Fill::wood, box(-6, -12, 116, -4), 0), wire({{14, -4}, {14, 30}}, 2),
                       wire({{84, -4}, {84, 34}}, 2), dashed({{-4, 6}, {112, 6}, {112, 16}, {-4, 16}}),
                       part(Fill::wood, {{-4, 30}, {110, 12}, {112, 21}, {-2, 39}}, 1)},
            .arrows = {{.way = {{2, 29}, {2, 10}}}}};
}

/// A pin in its rail, a forked bar at its foot, the key above it as it stands. `balance`: the pin goes through the key.
Scene pinAct(bool balance) {
    const double lean = balance ? 7 : 0;
    const double top = balance ? 66 : 38;
    const Shapes key = moved({part(Fill::wood, {{-11, 26}, {11, 26}, {11, 62}, {-11, 62}}, 1),
                              part(Fill::paper, {{-11.6, 62}, {11.6, 62}, {11.6, 66}, {-11.6, 66}}, 1)},
                             put({balance ? 0.0 : 4.0, 0}, balance ? -7 : 0));
    Shapes ghost = key;
    for (Shape& each : ghost) {
        each.fill = Fill::none;
        each.line = Line::dashed;
    }
    const auto neighbour = [](double x) {
        return Shapes{part(Fill::wood, box(x - 11, 26, x + 11, 62), 1),
                      part(Fill::paper, box(x - 11.6, 62, x + 11.6, 66), 1)};
    };
    return {
        .world = {-100, -22, 152, 98},
        .shapes = together(
            {{part(Fill::wood, box(-40, -20, 46, 0), 0), thinLine({{-36, -8}, {0, -9}, {42, -7}}, true)},
             neighbour(-26),
             neighbour(26),
             ghost,
             {part(
                  Fill::tool,
                  {{-2, -14}, {2, -14}, {2 + lean * 0.5, 20}, {2 + lean, top}, {-2 + lean, top}, {-2 + lean * 0.5, 20}},
                  1.2),
              part(Fill::felt, box(-8, 0, 8, 3), 0.6), part(Fill::tool, box(-84, 6, 5, 12), 0.8),
              part(Fill::metal, box(-3.6, 7.5, 5, 10.5), 0)},
             moved(fist(), put({-62, 9}, 0, 0.72))}),
        .arrows = {{.way = balance ? Points{{22, 74}, {2, 74}} : Points{{24, 20}, {6, 20}}}},
        .names = {
            {.text = balance ? "do-square-key" : "do-space-key",
             .part = balance ? QPointF(20, 74) : QPointF(22, 20),
             .side = Side::right,
             .strong = true},
            {.text = "forked-bar", .part = {-20, 12}, .level = 40},
            {.text = balance ? "balance-pin" : "front-pin",
             .part = balance ? QPointF(4, 22) : QPointF(0, 24),
             .level = 58},
            {.text = balance ? "key-leans" : "key-aside", .part = {balance ? 12.0 : 12.0, 46}, .side = Side::right},
            {.text = "rail", .part = {40, -12}, .side = Side::right}}};
}

/// From above: fronts of naturals with the sharps between.
Scene gapsTest() {
    Shapes out;
    for (const double x : {-24.0, 0.0, 24.0})
        out.push_back(part(Fill::paper, box(x - 11.3, -40, x + 11.3, 24), 1));
    for (const double x : {-12.0, 12.0})
        out.push_back(part(Fill::dark, box(x - 5, -12, x + 5, 26), 1));
    return {.world = {-38, -42, 76, 64}, .shapes = out};
}

} // namespace

std::vector<Drawing> keyDrawings() {
    return {{.step = "ease-keys", .kinds = "UBDG", .act = easeAct(), .test = fallTest()},
            {.step = "square-keys", .kinds = "UBDG", .act = pinAct(true), .test = gapsTest()},
            {.step = "space-keys", .kinds = "UBDG", .act = pinAct(false), .test = gapsTest()}};
}

} // namespace hammerline::doing
