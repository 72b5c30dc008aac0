// Taking up lost motion at an upright's capstan.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

/// The rest rail and what it bears, for tests that watch the hammer.
Shapes hammerOnRail(double turn) {
    const Shapes rail{
        part(Fill::wood, box(-30, 80, -9, 100), 1.5),
        part(Fill::felt, box(-9, 79, -3, 101), 1),
    };
    return together({uprightString(), uprightHead(turn),
                     moved({part(Fill::wood, box(-3, 40, 3, 92), 0)}, uprightHammer(turn)),
                     moved(rail, uprightHammer(kUprightRest))});
}

Scene capstanAct() {
    return {.world = {186, -4, 228, 104},
            .shapes = together({uprightRails(),
                                uprightKeyEnd(),
                                uprightJack(0),
                                uprightWippen(),
                                uprightCapstan(0),
                                {wire({{338.5, 40.5}, {250, 40.5}, {236, 41.5}}, 2.6)},
                                {part(Fill::tool, box(196, 36.5, 250, 46), 3)},
                                moved(fist(), put({226, 41}, 0, 0.82))}),
            .arrows = {{.way = {{315, 33}, {340, 15}, {366, 33}}}},
            .names = {{.text = "wippen", .part = {290, 72}, .level = 84},
                      {.text = "rod-in-capstan", .part = {312, 41.5}, .level = 62},
                      {.text = "cushion", .part = {350, 52}, .side = Side::right, .level = 60},
                      {.text = "do-capstan", .part = {364, 34}, .side = Side::right, .strong = true, .level = 36},
                      {.text = "key", .part = {386, 10}, .side = Side::right}}};
}

Scene railTest() {
    return {.world = {270, 228, 160, 92},
            .shapes = hammerOnRail(kUprightRest),
            .arrows = {{.way = {{276, 250}, {300, 250}}}, {.way = {{372, 276}, {392, 276}}}}};
}

} // namespace

std::vector<Drawing> capstanDrawings() {
    return {{.step = "take-up-lost-motion", .kinds = "UB", .act = capstanAct(), .test = railTest()}};
}

} // namespace hammerline::doing
