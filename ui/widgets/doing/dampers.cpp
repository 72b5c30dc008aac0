// Timing an upright's dampers at the spoon.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

Scene spoonAct() {
    return {.world = {232, 24, 186, 132},
            .shapes = together(
                {uprightRails(),
                 uprightDamper(0),
                 uprightJack(0),
                 uprightWippen(),
                 uprightSpoon(),
                 {wire({{300, 44}, {380, 47}, {402, 54}, {412, 68}, {413, 84}, {406, 96}}, 3.6, true),
                  part(Fill::tool, {{399, 94}, {408, 91}, {410, 97}, {405, 98.5}, {404.5, 102}, {402, 103}}, 0.6),
                  part(Fill::tool, box(246, 39, 304, 49), 3)},
                 moved(fist(), put({276, 44}, 0, 0.78))}),
            .arrows = {{.way = {{376, 128}, {388, 112}, {402, 111}}}},
            .names = {{.text = "do-spoon", .part = {376, 128}, .strong = true, .level = 134},
                      {.text = "wippen", .part = {290, 73}, .level = 84},
                      {.text = "damper-lever", .part = {405, 150}, .side = Side::right},
                      {.text = "lever-foot", .part = {411, 104}, .side = Side::right, .level = 112},
                      {.text = "spoon", .part = {402, 90}, .side = Side::right},
                      {.text = "slotted-rod", .part = {411, 66}, .side = Side::right}}};
}

/// Half the way is blocked: the hammer stands half way as its damper stirs.
Scene halfTest() {
    const double half = 9.5;
    Shapes ghost = uprightHead(kUprightRest);
    for (Shape& each : ghost) {
        each.fill = Fill::none;
        each.line = Line::dashed;
    }
    return {.world = {326, 256, 106, 68},
            .shapes = together({uprightString(), ghost, uprightHead(half)}),
            .arrows = {{.way = {{372, 316}, {392, 316}}}}};
}

} // namespace

std::vector<Drawing> damperDrawings() {
    return {{.step = "time-dampers-by-key", .kinds = "UB", .act = spoonAct(), .test = halfTest()}};
}

} // namespace hammerline::doing
