// A hammer's head under the file, seen from the side, its crown to the right.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

Shapes headOnItsShank() {
    return {
        part(Fill::wood, box(-4, -66, 4, -16), 0),
        curve(Fill::felt, {{-6, -19}, {14, -21}, {38, -16}, {56, -7}, {60, 0}, {56, 7}, {38, 16}, {14, 21}, {-6, 19}}),
        part(Fill::wood, {{-42, -9}, {-4, -13}, {36, 0}, {-4, 13}, {-42, 12}}, 2)};
}

Scene fileAct() {
    // the lath lies along the shoulder
    const Shapes lath{part(Fill::wood, box(-96, 1.6, 30, 5), 0.4), part(Fill::dark, box(-30, 0, 30, 1.6), 0)};
    return {.world = {-70, -42, 160, 98},
            .shapes = together(
                {headOnItsShank(),
                 {dashed({{30, 15.5}, {46, 10.4}, {53, 5.5}, {55, 0}, {53, -5.5}, {46, -10.4}, {30, -15.5}}, false)},
                 moved(lath, put({38, 17}, -20)),
                 moved(fist(), put({-22, 42}, -20, 0.78))}),
            .arrows = {{.way = {{34, 34}, {54, 27}, {66, 12}}}},
            .names = {{.text = "do-file", .part = {36, 33}, .side = Side::right, .strong = true, .level = 44},
                      {.text = "stop-here", .part = {60, 2}, .side = Side::right},
                      {.text = "both-shoulders", .part = {44, -13}, .side = Side::right, .level = -22},
                      {.text = "lath", .part = {10, 26}, .level = 14},
                      {.text = "wood-of-head", .part = {-30, 0}, .level = -10}}};
}

/// Felt left over the wood.
Scene feltTest() {
    return {.world = {-46, -24, 118, 52},
            .shapes = together({headOnItsShank(), {thinLine({{36, 0}, {36, 27}}), thinLine({{60, 0}, {60, 27}})}}),
            .arrows = {{.way = {{48, 24}, {36, 24}}}, {.way = {{48, 24}, {60, 24}}}}};
}

} // namespace

std::vector<Drawing> headDrawings() {
    return {{.step = "file-hammers", .kinds = "UBDG", .act = fileAct(), .test = feltTest()}};
}

} // namespace hammerline::doing
