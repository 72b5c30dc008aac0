// The rest rail's pad, the bridle's strap and wire, and the seat of the whole action.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

Scene restRailAct() {
    const QTransform rest = uprightHammer(kUprightRest);
    const Shapes rail{
        // bracket that carries the rail
        part(Fill::tool, {{-46, 60}, {-38, 60}, {-34, 76}, {-34, 104}, {-44, 104}, {-44, 78}}, 2),
        part(Fill::felt, box(-34, 84, -28.5, 112), 0.6),
        part(Fill::wood, box(-28.5, 79, -9, 101), 1.5),
        thinLine({{-26, 83}, {-18, 91}}),
        thinLine({{-20, 83}, {-12, 91}}),
        thinLine({{-26, 90}, {-18, 98}}),
        part(Fill::felt, box(-9, 78, -3, 102), 1),
    };
    return {.world = {240, 205, 186, 112},
            .shapes = together({uprightString(), uprightHead(kUprightRest),
                                moved({part(Fill::wood, box(-3, 30, 3, 92), 0)}, rest), moved(rail, rest),
                                moved(pinch(), put(rest.map(QPointF(-31, 112)), 26, 0.62, true))}),
            .arrows = {{.way = {{318, 219}, {344, 227.5}}}},
            .names = {{.text = "pad", .part = rest.map(QPointF(-31, 100))},
                      {.text = "bracket", .part = rest.map(QPointF(-39, 78))},
                      {.text = "do-rest-rail", .part = {318, 219}, .side = Side::left, .strong = true},
                      {.text = "string", .part = {421, 300}, .side = Side::right},
                      {.text = "hammer", .part = {372, 290}, .side = Side::right},
                      {.text = "shank", .part = rest.map(QPointF(2, 55)), .side = Side::right}}};
}

Scene blowTest() {
    return {.world = {326, 262, 110, 66},
            .shapes =
                together({uprightString(),
                          uprightHead(kUprightRest),
                          {part(Fill::paper, box(380, 301.5, 420, 305), 0.3), thinLine({{390, 301.5}, {390, 305}}),
                           thinLine({{400, 301.5}, {400, 305}}), thinLine({{410, 301.5}, {410, 305}})}})};
}

/// From the butt to the wire's tip; `slack` how far it hangs.
Shape strap(QPointF tip, double slack) {
    const QPointF from = uprightHammer(kUprightRest).map(QPointF(-44, 8));
    const QPointF middle = (from + tip) / 2 - QPointF(0, slack);
    return {.fill = Fill::none, .points = {from, middle, tip}, .smooth = true, .open = true, .wire = 1.1};
}

Shapes bridleWire(double lean) {
    return {wire({{268, 77}, {266, 95}, {263 + lean, 118}, {262 + lean, 129}, {266 + lean, 133}}, 1.8, true)};
}

Scene wireAct() {
    return {.world = {168, 64, 226, 122},
            .shapes =
                together({uprightButt(kUprightRest),
                          uprightWippen(),
                          {strap({264, 130}, 17)},
                          bridleWire(0),
                          {dashed({{267, 92}, {258, 116}, {255, 128}, {259, 133}}, false),
                           part(Fill::tool, box(176, 89, 272, 96), 1), part(Fill::metal, box(264, 90.5, 272, 94.5), 0)},
                          moved(fist(), put({208, 92.5}, 0, 0.76))}),
            .arrows = {{.way = {{264, 146}, {238, 146}}}},
            .names = {{.text = "do-bridle-wire", .part = {238, 146}, .strong = true, .level = 158},
                      {.text = "bar-at-foot", .part = {254, 95.5}, .level = 116},
                      {.text = "catcher-stem", .part = {330, 168}, .side = Side::right},
                      {.text = "strap", .part = {304, 133}, .side = Side::right},
                      {.text = "wippen", .part = {350, 68}, .side = Side::right}}};
}

Scene wireTest() {
    return {.world = {240, 64, 150, 116},
            .shapes = together({uprightButt(kUprightRest), uprightWippen(), bridleWire(0), {strap({264, 130}, 0)}})};
}

/// The foot of the action's bracket, resting on the ball of its bolt in the bed.
Shape socketOnBall() {
    return part(Fill::wood,
                {{-15, 8},
                 {-10, 6},
                 {-8, 10},
                 {-4, 13.2},
                 {0, 14},
                 {4, 13.2},
                 {8, 10},
                 {10, 6},
                 {15, 8},
                 {14, 24},
                 {8, 34},
                 {7, 44},
                 {-7, 44},
                 {-8, 34},
                 {-14, 24}},
                1.2);
}

/// A foot of the bracket over its stud, the bracket's top at its bolt; what lies between is left out.
Scene seatAct() {
    const Shapes foot{
        part(Fill::wood, box(-60, -30, 62, -12), 0), thinLine({{-54, -20}, {0, -18}, {56, -21}}, true),
        part(Fill::tool, box(-3, -24, 3, 2), 0.5),   part(Fill::tool, box(-9, -12, 9, -8), 1),
        curve(Fill::tool, oval({0, 6}, 15, 15)),     socketOnBall(),
    };
    const Shapes top{
        part(Fill::metal, box(52, 52, 58, 104), 0.5),
        part(Fill::tool, box(4, 76, 52, 81), 0),
        thinLine({{10, 76}, {12, 81}}),
        thinLine({{15, 76}, {17, 81}}),
        thinLine({{40, 76}, {42, 81}}),
        thinLine({{45, 76}, {47, 81}}),
        part(Fill::tool, box(34, 72, 39, 85), 0.8),
        part(Fill::wood, {{-7, 56}, {7, 56}, {9, 66}, {34, 66}, {34, 91}, {26, 91}, {26, 72}, {4, 76}, {-5, 70}}, 1.5),
        part(Fill::wood, box(24, 66, 34, 92), 1.5),
        part(Fill::tool, {{6, 68}, {22, 70}, {22, 87}, {6, 89}, {2, 84}, {2, 73}}, 2),
        thinLine({{8, 72}, {20, 73}}),
        thinLine({{8, 78.5}, {20, 78.5}}),
        thinLine({{8, 85}, {20, 84}}),
    };
    return {.world = {-88, -32, 158, 140},
            .shapes = together({foot,
                                top,
                                {dashed({{-12, 47}, {-4, 50}, {4, 47}, {12, 50}}, false),
                                 dashed({{-12, 51}, {-4, 54}, {4, 51}, {12, 54}}, false)},
                                moved(pinch(), put({10, 79}, 62, 0.95, false))}),
            .arrows = {{.way = {{-27, 42}, {-27, 14}}}},
            .names = {{.text = "do-seat", .part = {-27, 42}, .strong = true},
                      {.text = "socket", .part = {12, 22}, .side = Side::right},
                      {.text = "bed", .part = {-50, -20}},
                      {.text = "knob", .part = {14, 86}, .side = Side::right},
                      {.text = "bolt", .part = {46, 79}, .side = Side::right},
                      {.text = "stud", .part = {5, 3}, .side = Side::right}}};
}

Scene seatTest() {
    return {.world = {-34, -26, 68, 74},
            .shapes = {part(Fill::wood, box(-30, -24, 30, -12), 0), part(Fill::tool, box(-3, -12, 3, 2), 0.5),
                       curve(Fill::tool, oval({0, 6}, 15, 15)), socketOnBall()},
            .arrows = {{.way = {{-30, 32}, {-14, 32}}}, {.way = {{30, 32}, {14, 32}}}}};
}

} // namespace

std::vector<Drawing> railDrawings() {
    return {{.step = "set-rest-rail", .kinds = "UB", .act = restRailAct(), .test = blowTest()},
            {.step = "set-bridle-wires", .kinds = "UB", .act = wireAct(), .test = wireTest()},
            {.step = "seat-action", .kinds = "UB", .act = seatAct(), .test = seatTest()}};
}

} // namespace hammerline::doing
