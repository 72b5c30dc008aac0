// A grand's action, seen from the bass end with the player at the left: geometry of our own, in mm.
#include "ui/widgets/action_sketch.h"

#include <cmath>

namespace hammerline {

namespace {

constexpr QPointF kBalance{205, 0}, kWippen{330, 70}, kShank{222, 134}, kJack{236, 68};
constexpr double kCapstan = 263, kLength = 120, kHead = 50, kRake = 13; // degrees
constexpr double kRest = -7, kStrike = 13;

double crownHeight(double degrees) {
    const double a = degrees * M_PI / 180, h = (90 - kRake) * M_PI / 180;
    return kShank.y() + kLength * std::sin(a) + kHead * std::sin(a + h);
}

double stringHeight() {
    return crownHeight(kStrike);
}

double turnFor(double gap) {
    double low = kRest - 5, high = kStrike;
    for (int i = 0; i < 40; ++i) {
        const double middle = (low + high) / 2;
        (stringHeight() - crownHeight(middle) > gap ? low : high) = middle;
    }
    return low;
}

void drawFrame(Sketch& s) {
    s.ground(-20, 450, -30);
    s.wood(QPolygonF{{QPointF(6, -30), QPointF(36, -30), QPointF(36, -20), QPointF(6, -20)}});
    s.felt(QPolygonF{{QPointF(10, -20), QPointF(32, -20), QPointF(32, -16), QPointF(10, -16)}});
    s.wood(QPolygonF{{QPointF(188, -30), QPointF(222, -30), QPointF(222, -6), QPointF(188, -6)}});
    s.felt(QPolygonF{{QPointF(194, -6), QPointF(216, -6), QPointF(216, 0), QPointF(194, 0)}});
    s.wood(QPolygonF{{QPointF(394, -30), QPointF(426, -30), QPointF(426, -7), QPointF(394, -7)}});
    s.felt(QPolygonF{{QPointF(394, -7), QPointF(426, -7), QPointF(426, -1), QPointF(394, -1)}});
    s.string({236, stringHeight()}, {455, stringHeight()});
    s.wood(QPolygonF{{QPointF(182, 122), QPointF(212, 122), QPointF(212, 148), QPointF(182, 148)}}); // hammer rail
    s.wood(QPolygonF{{QPointF(200, 110), QPointF(222, 110), QPointF(222, 121), QPointF(200, 121)}}); // let-off rail
    s.metal(QPolygonF{{QPointF(211, 110), QPointF(211, 100)}}, 2);
    s.felt(QPolygonF{{QPointF(205, 100), QPointF(217, 100), QPointF(217, 92), QPointF(205, 92)}});
    s.wood(QPolygonF{{QPointF(336, 40), QPointF(356, 40), QPointF(356, 58), QPointF(336, 58)}}); // wippen rail
    s.felt(QPolygonF{{QPointF(288, 108), QPointF(304, 106), QPointF(304, 114), QPointF(288, 116)}});
    s.metal(QPolygonF{{QPointF(296, 107), QPointF(304, 84)}}, 3);
}

void drawKey(Sketch& s, double down) {
    const QTransform pose = Sketch::turned(std::atan(down / kBalance.x()) * 180 / M_PI, kBalance);
    s.keyTop(QPolygonF{{QPointF(56, 22), QPointF(150, 22), QPointF(150, 36), QPointF(66, 36)}}, true, pose);
    s.wood(QPolygonF{{QPointF(0, 0), QPointF(432, 0), QPointF(432, 22), QPointF(0, 22)}}, pose);
    s.keyTop(QPolygonF{{QPointF(-3, 18), QPointF(150, 18), QPointF(150, 22), QPointF(-3, 22)}}, false, pose);
    s.metal(QPolygonF{{QPointF(kCapstan, 22), QPointF(kCapstan, 38)}}, 3.5, pose);
    s.wood(QPolygonF{{QPointF(kCapstan - 6, 37), QPointF(kCapstan + 6, 37), QPointF(kCapstan + 6, 44),
                      QPointF(kCapstan - 6, 44)}},
           pose);
    s.metal(QPolygonF{{QPointF(376, 22), QPointF(356, 98)}}, 2, pose); // back check
    s.wood(QPolygonF{{QPointF(349, 96), QPointF(361, 98), QPointF(360, 136), QPointF(348, 132)}}, pose);
    s.felt(QPolygonF{{QPointF(345, 97), QPointF(349, 96), QPointF(348, 132), QPointF(344, 128)}}, pose);
}

void drawWippen(Sketch& s, double lift, double jackTilt) {
    const QTransform pose = Sketch::turned(-std::atan(lift / (kWippen.x() - kCapstan)) * 180 / M_PI, kWippen);
    s.metal(QPolygonF{{QPointF(280, 70), QPointF(282, 97)}}, 5, pose);
    s.wood(QPolygonF{{QPointF(224, 98), QPointF(302, 94), QPointF(304, 101), QPointF(224, 107)}}, pose);
    s.wood(QPolygonF{{QPointF(222, 58), QPointF(250, 54), QPointF(252, 44), QPointF(276, 44), QPointF(278, 55),
                      QPointF(334, 64), QPointF(334, 77), QPointF(222, 71)}},
           pose);
    const QTransform jack = Sketch::turned(jackTilt, kJack) * pose;
    s.wood(QPolygonF{{QPointF(230, 66), QPointF(242, 66), QPointF(251, 112), QPointF(243, 114), QPointF(233, 82),
                      QPointF(207, 86), QPointF(206, 80)}},
           jack);
    s.disc(kJack, 2.5, pose);
    s.wood(QPolygonF{{QPointF(326, 66), QPointF(336, 66), QPointF(346, 58), QPointF(338, 58)}});
    s.disc(kWippen, 2.5);
}

void drawHammer(Sketch& s, double turn) {
    const QTransform pose = QTransform::fromTranslate(kShank.x(), kShank.y()) * Sketch::turned(turn, kShank);
    s.wood(QPolygonF{{QPointF(0, -3), QPointF(124, -3), QPointF(124, 3), QPointF(0, 3)}}, pose);
    s.felt(QPolygonF{{QPointF(19, -3), QPointF(33, -3), QPointF(33, -12), QPointF(26, -16), QPointF(19, -12)}}, pose);
    const QTransform head = QTransform::fromTranslate(kLength, 0) * Sketch::turned(-kRake, QPointF(kLength, 0)) * pose;
    QPainterPath felt(QPointF(-17, 4));
    felt.cubicTo(-20, 30, -11, kHead, 0, kHead);
    felt.cubicTo(11, kHead, 20, 30, 17, 4);
    felt.closeSubpath();
    s.felt(felt, head);
    s.wood(QPolygonF{{QPointF(-7, -22), QPointF(7, -24), QPointF(12, 6), QPointF(0, 30), QPointF(-12, 6)}}, head);
    s.wood(QPolygonF{{QPointF(210, 128), QPointF(226, 130), QPointF(226, 139), QPointF(210, 142)}});
    s.disc(kShank, 3);
}

void drawDamper(Sketch& s, double off) {
    const double y = stringHeight() + off;
    s.wood(QPolygonF{{QPointF(392, 44 + off * 0.8), QPointF(448, 48), QPointF(448, 56), QPointF(392, 53 + off * 0.8)}});
    s.disc({444, 52}, 2.5);
    s.metal(QPolygonF{{QPointF(410, 52 + off * 0.6), QPointF(410, y + 7)}}, 2);
    s.felt(QPolygonF{{QPointF(397, y + 1), QPointF(423, y + 1), QPointF(421, y + 8), QPointF(399, y + 8)}});
    s.wood(QPolygonF{{QPointF(399, y + 8), QPointF(421, y + 8), QPointF(421, y + 30), QPointF(399, y + 30)}});
}

} // namespace

ActionPoints drawGrand(Sketch& s, const ActionPose& pose, bool ghostOfMoving) {
    const double lift = pose.lift >= 0 ? pose.lift : pose.keyDown * (kCapstan - kBalance.x()) / kBalance.x();
    const double rest = kRest + pose.railForward * (kStrike - kRest);
    const double turn = pose.gap < 0 ? rest : turnFor(pose.gap);
    if (!ghostOfMoving) {
        drawFrame(s);
        drawDamper(s, pose.damperOff);
        drawKey(s, pose.keyDown);
        drawWippen(s, lift, pose.jackTilt);
    }
    drawHammer(s, turn);
    ActionPoints points;
    const double a = turn * M_PI / 180, h = (90 - kRake) * M_PI / 180;
    const QPointF end = kShank + kLength * QPointF(std::cos(a), std::sin(a));
    points.crown = end + kHead * QPointF(std::cos(a + h), std::sin(a + h));
    points.coreTip = end + 30 * QPointF(std::cos(a + h), std::sin(a + h));
    points.string = {points.crown.x(), stringHeight()};
    points.keyFront = {0, 22 - pose.keyDown};
    points.damper = {410, stringHeight() + pose.damperOff};
    points.capstan = {kCapstan, 44};
    points.keyAtCapstan = {kCapstan, 22};
    return points;
}

} // namespace hammerline
