// Hands, drawn for this program: as much of one as a drawing needs to show where it holds.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

/// Around a bar along x: back of the hand at the left below, four fingers over the bar, the thumb along it.
Shapes fist() {
    return {
        curve(Fill::hand, {{-62, -34},
                           {-40, -27},
                           {-18, -20},
                           {4, -15},
                           {17, -8},
                           {19, 2},
                           {8, 9},
                           {-10, 11},
                           {-26, 8},
                           {-42, -2},
                           {-68, -10},
                           {-74, -22}}),
        curve(Fill::hand, {{-21, 9}, {-23, 0}, {-20, -9}, {-14, -11}, {-10, -7}, {-11, 2}, {-12, 9}, {-16, 12}}),
        curve(Fill::hand, {{-11, 10}, {-12, 0}, {-10, -10}, {-4, -12}, {0, -8}, {-1, 2}, {-2, 10}, {-6, 13}}),
        curve(Fill::hand, {{-1, 10}, {-2, 0}, {0, -10}, {6, -12}, {10, -8}, {9, 2}, {8, 10}, {4, 13}}),
        curve(Fill::hand, {{9, 9}, {8, 0}, {10, -9}, {15, -11}, {19, -7}, {19, 1}, {18, 8}, {14, 12}}),
        curve(Fill::hand, {{-6, 12}, {6, 12}, {18, 10}, {27, 7}, {30, 3}, {27, 0}, {18, 2}, {6, 5}, {-8, 7}}),
        thinLine({{24, 6}, {28, 5}, {28, 3}}),
    };
}

namespace {

/// Two fingers run into the back of the hand: no line ends them there.
Shapes openFinger(Points points) {
    return {{.fill = Fill::hand, .points = points, .smooth = true, .line = Line::hidden},
            {.fill = Fill::none, .points = points, .smooth = true, .open = true}};
}

} // namespace

/// Thumb at the left, first finger at the right, tips at 0.
Shapes pinch() {
    return together({
        {curve(Fill::hand, {{-12, 74},
                            {-10, 60},
                            {4, 52},
                            {30, 50},
                            {52, 62},
                            {78, 86},
                            {98, 112},
                            {84, 140},
                            {40, 150},
                            {6, 128},
                            {-8, 98}})},
        openFinger({{36, 76},
                    {28, 58},
                    {22, 44},
                    {14, 28},
                    {7, 12},
                    {1, 1},
                    {1, -3},
                    {5, -4},
                    {11, 4},
                    {20, 17},
                    {31, 30},
                    {44, 44},
                    {56, 64}}),
        openFinger({{-11, 74},
                    {-11, 44},
                    {-9, 26},
                    {-8, 12},
                    {-5, 1},
                    {-2, -3},
                    {1, -1},
                    {2, 6},
                    {3, 14},
                    {8, 28},
                    {16, 44},
                    {22, 60}}),
        {thinLine({{-6, 9}, {-6.5, 3}, {-3, -0.5}}, true), thinLine({{5, 8}, {2.5, 2.5}, {3.5, -1}}, true),
         thinLine({{9, 27}, {13, 25}}), thinLine({{-8, 27}, {-3, 28}})},
    });
}

} // namespace hammerline::doing
