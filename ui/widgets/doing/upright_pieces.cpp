// The upright's parts at rest, seen from the bass end with the player at the left.
#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

namespace {

constexpr QPointF kButt{366, 165}, kJack{338, 84}, kDamper{404, 140};

} // namespace

QTransform uprightHammer(double turn) {
    return put(kButt, turn);
}

Shapes uprightKeyEnd() {
    return {
        part(Fill::wood, box(180, 0, 392, 22)),
        thinLine({{186, 6}, {250, 7.5}, {330, 6}, {388, 7}}, true),
        thinLine({{190, 15}, {260, 14}, {320, 16}, {388, 14.5}}, true),
    };
}

/// A screw in the key, its round head with a hole for the pin; `up` mm above where it stands.
Shapes uprightCapstan(double up) {
    return {
        dashed({{337.6, 3}, {337.6, 22}}, false),
        dashed({{342.4, 3}, {342.4, 22}}, false),
        part(Fill::tool, box(337.6, 22, 342.4, 37 + up), 0),
        thinLine({{337.6, 25}, {342.4, 27}}),
        thinLine({{337.6, 29}, {342.4, 31}}),
        part(Fill::tool,
             {{333, 36 + up}, {347, 36 + up}, {347, 44 + up}, {344, 49 + up}, {336, 49 + up}, {333, 44 + up}}, 2),
        part(Fill::metal, oval({340, 40.5 + up}, 3.4, 3.4)),
    };
}

Shapes uprightWippen() {
    return {
        // flange, screwed under the rail
        part(Fill::wood, {{390, 78}, {399, 75}, {403, 80}, {398, 92}, {395, 110}, {385, 110}, {388, 94}}),
        // cushion on the heel
        part(Fill::felt, {{324, 49}, {356, 49}, {356, 55}, {324, 55}}, 1.5),
        part(Fill::wood,
             {{261, 79},
              {261, 70},
              {316, 64},
              {323, 54},
              {357, 54},
              {364, 64},
              {398, 72},
              {406, 75},
              {406, 85},
              {398, 89},
              {372, 80},
              {350, 77},
              {300, 79}},
             1.5),
        thinLine({{268, 74}, {312, 69.5}, {330, 63}, {352, 63}, {392, 77}}, true),
        // jack flange
        part(Fill::wood, {{329, 76}, {347, 76}, {344, 88}, {333, 88}}, 2),
        part(Fill::metal, oval({398, 80}, 3.4, 3.4)),
    };
}

Shapes uprightJack(double tilt) {
    const Shapes stem{
        part(Fill::wood,
             {{-6, 2}, {5, -2}, {8, 22}, {21.5, 68}, {13, 70}, {3, 40}, {-4, 14}, {-24, 14}, {-26, 8}, {-10, 6}}, 1.5),
    };
    return together({{
                         wire({{kJack.x() - 19, 79},
                               {kJack.x() - 15, 82},
                               {kJack.x() - 21, 84},
                               {kJack.x() - 15, 87},
                               {kJack.x() - 21, 89},
                               {kJack.x() - 17, 92}},
                              0.5),
                     },
                     moved(stem, put(kJack, tilt)),
                     {part(Fill::metal, oval(kJack, 3, 3))}});
}

/// Butt with its leather, stem and catcher; the flange stays where it is.
Shapes uprightButt(double turn) {
    const Shapes frame{
        part(Fill::wood, {{-14, 6}, {-20, 12}, {-62, 16}, {-62, 12}}, 0.5),
        part(Fill::felt, {{-66, -1}, {-64, 27}, {-76, 29}, {-78, 1}}, 1.5),
        part(Fill::wood, {{-62, -1}, {-62, 26}, {-73, 28}, {-74, 1}}, 1.5),
        part(Fill::wood, box(-3, 18, 3, 96), 0),
        part(Fill::wood,
             {{-22, -8}, {-9, -9}, {-9, -15}, {-1, -17}, {9, -8}, {10, 5}, {7, 25}, {-8, 26}, {-18, 14}, {-24, 2}}, 2),
        part(Fill::felt, {{-22, -11}, {-9, -12}, {-9, -8.6}, {-22, -7.6}}, 0.5),
    };
    return together({{part(Fill::wood, {{360, 160}, {366, 172}, {374, 170}, {390, 160}, {390, 146}, {374, 152}}, 2)},
                     moved(frame, uprightHammer(turn)),
                     {part(Fill::metal, oval(kButt, 3.4, 3.4))}});
}

Shapes uprightHead(double turn) {
    const Shapes frame{
        part(Fill::wood, box(-3, 90, 3, 140), 0),
        curve(Fill::felt,
              {{4, 109}, {20, 107}, {40, 112}, {53, 119}, {55, 125}, {53, 131}, {40, 138}, {20, 143}, {4, 141}}),
        part(Fill::wood, {{-22, 117}, {6, 113}, {34, 125}, {6, 137}, {-22, 135}}, 1.5),
    };
    return moved(frame, uprightHammer(turn));
}

Shapes uprightRails() {
    return {
        part(Fill::wood, box(384, 108, 397, 158), 1.5),
        thinLine({{386, 112}, {395, 122}}),
        thinLine({{386, 122}, {395, 132}}),
        thinLine({{386, 132}, {395, 142}}),
        thinLine({{386, 142}, {395, 152}}),
    };
}

/// The button above the jack's toe, on a screw through the rail; the eye that the hook takes stands above.
Shapes uprightLetOff() {
    return {
        wire({{316, 108}, {316, 141}}, 2),
        part(Fill::wood, box(307, 124, 327, 137), 1.5),
        thinLine({{309, 126}, {315, 132}}),
        thinLine({{318, 126}, {325, 133}}),
        curve(Fill::tool, oval({316, 145}, 9, 9)),
        curve(Fill::wood, oval({316, 145}, 4, 4)),
        part(Fill::wood, box(309.5, 104, 322.5, 114), 2),
        part(Fill::felt, box(309.5, 100, 322.5, 104.5), 1),
    };
}

/// `lean`: of its head toward the catcher, mm.
Shapes uprightCheck(double lean) {
    return {
        wire({{279, 76}, {279, 108}, {279.5 + lean * 0.6, 130}, {281 + lean, 152}}, 2.4, true),
        part(Fill::wood, {{273 + lean, 151}, {286 + lean, 149}, {288 + lean, 185}, {275 + lean, 187}}, 1.5),
        part(Fill::felt, {{286 + lean, 149.5}, {290.5 + lean, 151}, {292 + lean, 182}, {288 + lean, 184.5}}, 1),
    };
}

/// On the wippen's end, its tip behind the lever's foot.
Shapes uprightSpoon() {
    return {wire({{403, 82}, {402, 92}, {401, 100}, {402.5, 107}, {404, 112}}, 2.2, true)};
}

/// Lever, wire and head; the spoon on the wippen's end reaches behind the lever's foot. `off` the string, mm.
Shapes uprightDamper(double off) {
    const Shapes lever{
        wire({{0, 30}, {3, 92}}, 2),
        part(Fill::felt, {{8, 85}, {15, 90}, {15, 117}, {8, 122}}, 1.5),
        part(Fill::wood, {{-2, 84}, {8.5, 84}, {8.5, 123}, {-2, 123}}, 1.5),
        part(Fill::wood, {{4, -42}, {9, -42}, {7, 0}, {5, 33}, {-4, 33}, {-4, -4}}, 1.5),
        part(Fill::felt, {{1.5, -42}, {4.5, -42}, {4, -22}, {0.5, -20}}, 0.5),
    };
    constexpr double kReach = 104, kDegrees = 57.3;
    return together({{part(Fill::wood, {{395, 148}, {395, 132}, {404, 134}, {410, 140}, {404, 146}}, 2)},
                     moved(lever, put(kDamper, off / kReach * kDegrees)),
                     {part(Fill::metal, oval(kDamper, 3, 3))}});
}

Shapes uprightString() {
    return {{.fill = Fill::metal, .points = box(420.5, -20, 422, 340), .round = 0, .line = Line::hidden}};
}

} // namespace hammerline::doing
