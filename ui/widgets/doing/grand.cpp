// A grand's wippen, lever and hammer, seen from the bass end: drop, let-off, spring and lever.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

constexpr QPointF kShankCentre{86, 128}, kJackCentre{105, 70}, kWippenCentre{200, 68}, kPost{148, 104};

Shapes grandShank() {
    return {
        // rail, flange screwed on it, the drop screw through the flange
        part(Fill::wood, box(14, 112, 50, 124), 1),
        thinLine({{21, 114}, {30, 122}}),
        thinLine({{34, 114}, {43, 122}}),
        part(Fill::wood, {{18, 124}, {90, 124}, {93, 128}, {88, 134}, {70, 136}, {18, 136}}, 1.5),
        part(Fill::wood, {{82, 124}, {96, 124}, {112, 125}, {262, 127}, {262, 133}, {112, 133}, {84, 133}, {80, 129}},
             1.5),
        curve(Fill::felt, oval({106, 120}, 11, 10)),
        part(Fill::wood, {{103.6, 125}, {103.6, 119}, {108.4, 119}, {108.4, 125}}, 0.5),
        part(Fill::metal, oval(kShankCentre, 3.4, 3.4)),
    };
}

Shapes dropScrew() {
    return {wire({{80, 117}, {80, 142}}, 2.4), part(Fill::tool, box(76.5, 141, 83.5, 144.5), 0.8),
            part(Fill::felt, box(76.5, 114, 83.5, 117.5), 0.8)};
}

Shapes grandWippen() {
    return {
        part(Fill::felt, box(119, 50, 143, 55), 1),
        part(Fill::wood,
             {{86, 66},
              {118, 62},
              {120, 54.5},
              {142, 54.5},
              {146, 60},
              {196, 62},
              {204, 65},
              {204, 72},
              {196, 76},
              {158, 74},
              {112, 76},
              {98, 76},
              {86, 72}},
             1.5),
        // post of the lever
        part(Fill::wood, {{140, 74}, {156, 74}, {152, 106}, {148, 109}, {144, 106}}, 1.5),
        part(Fill::metal, oval(kWippenCentre, 3.4, 3.4)),
    };
}

/// Its window shows the jack's top.
Shapes repetitionLever() {
    return {
        part(Fill::wood,
             {{74, 107}, {98, 108}, {114, 108}, {146, 99}, {172, 93}, {176, 98}, {150, 109}, {114, 115}, {74, 113}},
             1.5),
        dashed({{99, 108}, {113, 108}, {113, 115}, {99, 115}}),
        part(Fill::metal, oval(kPost, 3, 3)),
    };
}

Shapes grandJack() {
    return {
        part(Fill::wood,
             {{101, 72},
              {101.5, 112},
              {103, 114.5},
              {109, 114.5},
              {109.5, 72},
              {108, 66},
              {100, 66},
              {63, 74},
              {62, 79},
              {92, 79}},
             1.5),
        part(Fill::metal, oval(kJackCentre, 3, 3)),
        // its button, on a screw through the jack against a post
        wire({{109, 86}, {120, 86}}, 1.4),
        part(Fill::felt, box(112.5, 82.5, 116, 89.5), 0.8),
        part(Fill::wood, box(116, 75, 121, 92), 1),
    };
}

/// On its screw through the rail, above the jack's toe.
Shapes grandLetOff() {
    return {wire({{66, 88}, {66, 108}}, 2),
            part(Fill::wood, box(56, 93, 76, 104), 1.2),
            thinLine({{58, 95}, {65, 102}}),
            thinLine({{67, 95}, {74, 102}}),
            part(Fill::tool, box(62.5, 106.5, 69.5, 110), 0.8),
            part(Fill::wood, box(60, 83, 72, 90), 1.5),
            part(Fill::felt, box(60, 80, 72, 83.4), 0.8)};
}

/// From the lever's post over its loop to the slot under the lever's front.
Shapes spring() {
    return {wire({{147, 84}, {142, 90}, {138, 86}, {142, 82}, {146, 88}, {132, 99}, {118, 107}}, 1, true)};
}

Shapes leverScrew() {
    return {wire({{166, 86}, {166, 102}}, 2), part(Fill::tool, box(162.5, 101, 169.5, 104), 0.6),
            part(Fill::felt, box(161, 82, 171, 86.5), 1), part(Fill::wood, box(160, 74, 172, 82), 1)};
}

Shapes allOfIt() {
    return together({grandWippen(), spring(), leverScrew(), repetitionLever(), grandJack(), grandLetOff(), grandShank(),
                     dropScrew()});
}

Shapes driver(QPointF tip, double degrees, double scale) {
    return moved({part(Fill::tool, {{0, -1.6}, {6, -1.8}, {40, -1.8}, {40, 1.8}, {6, 1.8}, {0, 1.6}}, 0.3),
                  part(Fill::wood, {{40, -3}, {46, -6}, {80, -6}, {86, -3}, {86, 3}, {80, 6}, {46, 6}, {40, 3}}, 3)},
                 put(tip, degrees, scale));
}

constexpr QRectF kAll{6, 50, 208, 122};

Scene dropAct() {
    return {.world = {6, 50, 208, 140},
            .shapes = together({allOfIt(), driver({80, 145}, 62, 0.45), moved(pinch(), put({93, 168}, -14, 0.5))}),
            .arrows = {{.way = {{66, 150}, {76, 162}, {92, 156}}}},
            .names = {{.text = "do-drop", .part = {66, 150}, .strong = true},
                      {.text = "drop-screw", .part = {79, 139}, .level = 122},
                      {.text = "lever", .part = {76, 110}, .level = 96},
                      {.text = "shank", .part = {206, 130}, .side = Side::right},
                      {.text = "knuckle", .part = {109, 118}, .side = Side::right, .level = 114},
                      {.text = "jack", .part = {107, 98}, .side = Side::right, .level = 86}}};
}

Scene grandLetOffAct() {
    return {.world = {-62, 50, 220, 104},
            .shapes = together(
                {allOfIt(),
                 {part(Fill::tool, box(-10, 106.8, 63, 109.8), 0.8), part(Fill::tool, box(-56, 103, -6, 113), 3)},
                 moved(fist(), put({-28, 108}, 0, 0.7))}),
            .arrows = {{.way = {{46, 102}, {46, 84}}}},
            .names = {{.text = "do-let-off", .part = {46, 98}, .strong = true, .level = 80},
                      {.text = "hooked-tool", .part = {36, 109}, .level = 136},
                      {.text = "lever", .part = {130, 107}, .side = Side::right, .level = 112},
                      {.text = "let-off-rail", .part = {75, 98}, .side = Side::right, .level = 96},
                      {.text = "button", .part = {71, 87}, .side = Side::right, .level = 82},
                      {.text = "toe", .part = {72, 76}, .side = Side::right, .level = 66}}};
}

Scene springAct() {
    return {.world = kAll,
            .shapes = together({allOfIt(),
                                {wire({{186, 98}, {150, 98}, {133, 96}, {129, 98}, {130, 102}}, 1.4),
                                 part(Fill::wood, box(176, 94, 240, 102), 3)},
                                moved(pinch(), put({202, 101}, -24, 0.55))}),
            .arrows = {{.way = {{124, 82}, {124, 99}}}},
            .names = {{.text = "flange", .part = {60, 130}},
                      {.text = "spring", .part = {121, 105.5}, .level = 92},
                      {.text = "do-spring", .part = {124, 82}, .strong = true, .level = 66},
                      {.text = "hook", .part = {164, 98}, .side = Side::right, .level = 84},
                      {.text = "wippen", .part = {188, 68}, .side = Side::right}}};
}

Scene leverAct() {
    return {.world = kAll,
            .shapes = together({allOfIt(), driver({166.5, 105}, 66, 0.4), moved(pinch(), put({177, 127}, -14, 0.55))}),
            .arrows = {{.way = {{89, 105}, {89, 88}}}},
            .names = {{.text = "do-lever", .part = {89, 89}, .strong = true, .level = 62},
                      {.text = "lever", .part = {78, 109}, .level = 102},
                      {.text = "lever-screw", .part = {168, 102.5}, .side = Side::right, .level = 104},
                      {.text = "wippen", .part = {188, 68}, .side = Side::right}}};
}

} // namespace

std::vector<Drawing> grandDrawings() {
    return {{.step = "set-drop", .kinds = "G", .act = dropAct()},
            {.step = "set-grand-let-off", .kinds = "G", .act = grandLetOffAct()},
            {.step = "rough-springs", .kinds = "G", .act = springAct()},
            {.step = "fine-springs", .kinds = "G", .act = springAct()},
            {.step = "lever-height", .kinds = "G", .act = leverAct()}};
}

} // namespace hammerline::doing
