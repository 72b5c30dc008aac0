// An upright's let-off screw and its back checks: both are read at the gap between crown and string.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

/// The crown so many mm before the string, with the way that is read.
Scene gapTest(double turn, double from) {
    return {.world = {352, 258, 84, 56},
            .shapes = together({uprightString(), uprightHead(turn), {thinLine({{from, 291}, {420, 291}})}}),
            .arrows = {{.way = {{from - 15, 300}, {from, 300}}}}};
}

Scene letOffAct() {
    return {.world = {178, 66, 226, 116},
            .shapes = together(
                {uprightRails(),
                 uprightButt(kUprightRest),
                 uprightJack(0),
                 uprightWippen(),
                 uprightCheck(0),
                 uprightLetOff(),
                 {part(Fill::tool, box(240, 143.3, 309, 146.7), 1),
                  part(Fill::tool,
                       {{306, 141}, {312, 141}, {312, 143}, {309, 143}, {309, 147}, {312, 147}, {312, 149}, {306, 149}},
                       0.5),
                  part(Fill::tool, box(186, 140, 244, 150), 3)},
                 moved(fist(), put({218, 145}, 0, 0.82))}),
            .arrows = {{.way = {{298, 152}, {318, 172}, {338, 150}}}},
            .names = {{.text = "do-let-off", .part = {298, 153}, .strong = true, .level = 176},
                      {.text = "hook-on-eye", .part = {320, 147}, .side = Side::right, .level = 152},
                      {.text = "let-off-rail", .part = {326, 130}, .side = Side::right},
                      {.text = "button", .part = {322, 109}, .side = Side::right},
                      {.text = "toe", .part = {318, 94}, .side = Side::right, .level = 92}}};
}

Scene checkAct() {
    return {.world = {170, 66, 226, 130},
            .shapes = together(
                {uprightButt(kUprightRest),
                 uprightWippen(),
                 uprightCheck(0),
                 moved({dashed({{273, 151}, {286, 149}, {292, 151}, {293, 182}, {288, 185}, {275, 187}})},
                       QTransform::fromTranslate(7, -1)),
                 {part(Fill::tool, box(176, 85, 286, 92), 1), part(Fill::metal, box(277.4, 86.5, 286, 90.5), 0),
                  part(Fill::tool, box(176, 137, 287, 144), 1), part(Fill::metal, box(278, 138.5, 287, 142.5), 0)},
                 moved(fist(), put({208, 88.5}, 0, 0.76)),
                 moved(fist(), put({208, 140.5}, 0, 0.76))}),
            .arrows = {{.way = {{294, 188}, {318, 188}}}},
            .names = {{.text = "check", .part = {276, 178}, .level = 184},
                      {.text = "bends", .part = {266, 143.5}, .level = 160},
                      {.text = "holds-foot", .part = {266, 91.5}, .level = 112},
                      {.text = "do-check", .part = {318, 186}, .side = Side::right, .strong = true, .level = 180},
                      {.text = "catcher", .part = {300, 152}, .side = Side::right, .level = 148},
                      {.text = "wippen", .part = {340, 70}, .side = Side::right}}};
}

} // namespace

std::vector<Drawing> letOffDrawings() {
    return {{.step = "set-let-off", .kinds = "UB", .act = letOffAct(), .test = gapTest(1.6, 417)},
            {.step = "set-checks", .kinds = "UB", .act = checkAct(), .test = gapTest(7, 405.5)}};
}

} // namespace hammerline::doing
