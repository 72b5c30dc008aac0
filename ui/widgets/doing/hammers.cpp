// An upright's hammers on their rail, seen by the player: travelled at the flange, spaced at its screw, squared at the
// warmed shank. The shanks are drawn short.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

Shapes flange() {
    return {part(Fill::wood, {{-8, -2}, {8, -2}, {8, 20}, {5, 24}, {-5, 24}, {-8, 20}}, 1.5),
            curve(Fill::tool, oval({0, 7}, 9, 9)), part(Fill::metal, box(-4, 6.2, 4, 7.8), 0)};
}

/// Butt, shank and head from the player's side; the flange's centre at 0.
Shapes hammerFromFront(double head) {
    return together(
        {{part(Fill::wood, box(-2.6, 30, 2.6, 74), 0), part(Fill::wood, {{-5, 18}, {5, 18}, {6, 36}, {-6, 36}}, 1.5)},
         moved({part(Fill::felt, {{-7.5, 2}, {7.5, 2}, {7.5, 28}, {-7.5, 28}}, 2),
                part(Fill::wood, {{-5, -4}, {5, -4}, {4, 34}, {-4, 34}}, 1.5)},
               put({0, 70}, head))});
}

Shapes stringsAt(double x) {
    Shapes out;
    for (const double each : {-3.2, 0.0, 3.2})
        out.push_back({.fill = Fill::metal,
                       .points = box(x + each - 0.35, 58, x + each + 0.35, 118),
                       .round = 0,
                       .line = Line::hidden});
    return out;
}

Shapes railFront() {
    return {part(Fill::wood, box(-60, -14, 60, 14), 0), thinLine({{-52, -6}, {0, -5}, {52, -7}}, true),
            thinLine({{-52, 10}, {0, 11}, {52, 9}}, true)};
}

Shapes screwdriver(QPointF tip, double degrees) {
    return moved({part(Fill::tool, {{0, -1.6}, {6, -1.8}, {46, -1.8}, {46, 1.8}, {6, 1.8}, {0, 1.6}}, 0.3),
                  part(Fill::wood, {{46, -3}, {52, -6}, {88, -6}, {94, -3}, {94, 3}, {88, 6}, {52, 6}, {46, 3}}, 3)},
                 put(tip, degrees));
}

Scene spaceAct() {
    const double aside = 5;
    return {.world = {-92, -34, 156, 144},
            .shapes = together({stringsAt(-36), stringsAt(0), stringsAt(36), railFront(),
                                moved(flange(), put({-36, 0})), moved(hammerFromFront(0), put({-36, 0})),
                                moved(flange(), put({36, 0})), moved(hammerFromFront(0), put({36, 0})),
                                moved(flange(), put({aside, 0})), moved(hammerFromFront(0), put({aside, 0})),
                                screwdriver({aside - 1, 6}, 206), moved(fist(), put({-62, -20}, 26, 0.66))}),
            .arrows = {{.way = {{28, 50}, {9, 50}}}},
            .names = {{.text = "head", .part = {-37, 96}},
                      {.text = "rail", .part = {-54, 6}, .level = 14},
                      {.text = "three-strings", .part = {36, 108}, .side = Side::right},
                      {.text = "do-space", .part = {26, 50}, .side = Side::right, .strong = true},
                      {.text = "flange", .part = {42, 18}, .side = Side::right},
                      {.text = "screw-loosened", .part = {8, 5}, .side = Side::right, .level = -24}}};
}

/// From above: felt and the three strings that it meets.
Scene spaceTest() {
    Shapes out;
    for (const double x : {-22.0, 0.0, 22.0}) {
        out.push_back(part(Fill::felt, box(x - 6, -16, x + 6, 8), 3));
        for (const double each : {-3.2, 0.0, 3.2})
            out.push_back(wire({{x + each, -6}, {x + each, 14}}, 0.5));
    }
    return {.world = {-34, -18, 68, 34}, .shapes = out};
}

Scene travelAct() {
    // from above: the rail with its flanges, the one in the middle turned by the paper under its left side
    const auto fromAbove = [](QPointF at, double degrees) {
        return moved(
            {part(Fill::wood, {{-9, -26}, {-4, -26}, {-4, -34}, {4, -34}, {4, -26}, {9, -26}, {9, 0}, {-9, 0}}, 1),
             part(Fill::wood, box(-3.6, -40, 3.6, -27), 1), wire({{-8, -30}, {8, -30}}, 1.4),
             part(Fill::wood, {{-5, -52}, {5, -52}, {5, -38}, {-5, -38}}, 2)},
            put(at, degrees));
    };
    return {.world = {-74, -56, 142, 104},
            .shapes = together({{part(Fill::wood, box(-70, 0, 64, 18), 0), thinLine({{-66, 6}, {0, 8}, {60, 5}}, true),
                                 thinLine({{-66, 13}, {0, 12}, {60, 14}}, true)},
                                fromAbove({-36, 0}, 0),
                                fromAbove({36, 0}, 0),
                                fromAbove({0, -1.2}, 6),
                                {part(Fill::paper, {{-9.5, -2.4}, {-1, -1.6}, {-1, 0}, {-9.5, 0}}, 0.2),
                                 dashed({{0, 20}, {0, 47}}, false), dashed({{-1.6, 0}, {-1.6, 12}}, false),
                                 dashed({{2, 0}, {2, 12}}, false)}}),
            .arrows = {{.way = {{1, 20}, {-2.5, 46}}}},
            .names = {{.text = "do-travel", .part = {-2.5, 40}, .strong = true, .level = 38},
                      {.text = "paper-slip", .part = {-6, -1.2}, .level = -12},
                      {.text = "rail", .part = {56, 10}, .side = Side::right},
                      {.text = "flange", .part = {40, -10}, .side = Side::right},
                      {.text = "butt", .part = {38, -46}, .side = Side::right}}};
}

Scene boardTest() {
    Shapes out;
    for (const double x : {-36.0, -18.0, 0.0, 18.0, 36.0}) {
        out.push_back(part(Fill::felt, box(x - 5.5, 0, x + 5.5, 30), 2));
        out.push_back(part(Fill::wood, box(x - 2, -14, x + 2, 0), 0));
    }
    return {.world = {-48, -16, 96, 62},
            .shapes = out,
            .arrows = {{.way = {{-27, 8}, {-27, 40}}}, {.way = {{27, 8}, {27, 40}}}}};
}

Scene squareAct() {
    return {
        .world = {-96, 14, 152, 112},
        .shapes = together(
            {moved(hammerFromFront(0), put({-30, 0})),
             moved(hammerFromFront(0), put({30, 0})),
             moved(hammerFromFront(-9), put({0, 0})),
             {part(Fill::tool, box(7, 34, 10, 66), 0.5),
              part(Fill::tool,
                   {{-7, 51}, {-26, 53}, {-30, 58}, {-86, 60}, {-90, 50}, {-86, 40}, {-30, 42}, {-26, 47}, {-7, 49}},
                   2),
              thinLine({{-4, 47}, {-2, 50}, {-4, 53}}, true)},
             moved(fist(), put({-66, 50}, 0, 0.6)),
             moved(pinch(), put({2, 103}, 10, 0.5))}),
        .arrows = {{.way = {{16, 112}, {6, 122}, {-12, 114}}}},
        .names = {{.text = "do-square", .part = {16, 113}, .side = Side::right, .strong = true},
                  {.text = "head", .part = {32, 92}, .side = Side::right},
                  {.text = "shield", .part = {9, 40}, .side = Side::right},
                  {.text = "hot-air", .part = {-20, 53}, .level = 80}}};
}

} // namespace

std::vector<Drawing> hammerDrawings() {
    return {{.step = "space-hammers", .kinds = "UD", .act = spaceAct(), .test = spaceTest()},
            {.step = "travel-hammers", .kinds = "UD", .act = travelAct(), .test = boardTest()},
            {.step = "square-hammers", .kinds = "UBDG", .act = squareAct(), .test = boardTest()}};
}

} // namespace hammerline::doing
