// An upright's action, seen from the bass end with the player at the left: geometry of our own, in mm.
#include "ui/widgets/action_sketch.h"

#include <cmath>

namespace hammerline {

namespace {

constexpr QPointF kBalance{205, 0}, kWippen{398, 80}, kButt{366, 165}, kJack{338, 82}, kDamper{404, 140};
constexpr double kCapstan = 340, kHead = 55, kReach = 125; // crown from the butt's centre when it strikes
constexpr double kString = 421, kBlow = 46;

double gapAt(double degrees) {
    const double a = degrees * M_PI / 180;
    return kHead - kHead * std::cos(a) + kReach * std::sin(a);
}

/// Degrees that the hammer is turned back from the string at a gap.
double turnFor(double gap) {
    double low = 0, high = 30;
    for (int i = 0; i < 40; ++i) {
        const double middle = (low + high) / 2;
        (gapAt(middle) < gap ? low : high) = middle;
    }
    return low;
}

void drawFrame(Sketch& s) {
    s.ground(-20, 405, -30);
    s.wood(QPolygonF{{QPointF(6, -30), QPointF(36, -30), QPointF(36, -20), QPointF(6, -20)}});
    s.felt(QPolygonF{{QPointF(10, -20), QPointF(32, -20), QPointF(32, -16), QPointF(10, -16)}});
    s.wood(QPolygonF{{QPointF(188, -30), QPointF(222, -30), QPointF(222, -6), QPointF(188, -6)}});
    s.felt(QPolygonF{{QPointF(194, -6), QPointF(216, -6), QPointF(216, 0), QPointF(194, 0)}});
    s.wood(QPolygonF{{QPointF(350, -30), QPointF(386, -30), QPointF(386, -7), QPointF(350, -7)}});
    s.felt(QPolygonF{{QPointF(350, -7), QPointF(386, -7), QPointF(386, -1), QPointF(350, -1)}});
    s.string({kString, 40}, {kString, 330});
    s.wood(QPolygonF{{QPointF(383, 112), QPointF(394, 112), QPointF(394, 172), QPointF(383, 172)}}); // action rail
    s.wood(QPolygonF{{QPointF(309, 122), QPointF(327, 122), QPointF(327, 136), QPointF(309, 136)}}); // let-off rail
    s.metal(QPolygonF{{QPointF(318, 122), QPointF(318, 108)}}, 2);
    s.felt(QPolygonF{{QPointF(312, 108), QPointF(324, 108), QPointF(324, 100), QPointF(312, 100)}});
}

void drawKey(Sketch& s, double down) {
    const QTransform pose = Sketch::turned(std::atan(down / kBalance.x()) * 180 / M_PI, kBalance);
    s.keyTop(QPolygonF{{QPointF(56, 22), QPointF(150, 22), QPointF(150, 36), QPointF(66, 36)}}, true, pose);
    s.wood(QPolygonF{{QPointF(0, 0), QPointF(392, 0), QPointF(392, 22), QPointF(0, 22)}}, pose);
    s.keyTop(QPolygonF{{QPointF(-3, 18), QPointF(150, 18), QPointF(150, 22), QPointF(-3, 22)}}, false, pose);
    s.metal(QPolygonF{{QPointF(kCapstan, 22), QPointF(kCapstan, 42)}}, 3.5, pose);
    s.wood(QPolygonF{{QPointF(kCapstan - 6, 42), QPointF(kCapstan + 6, 42), QPointF(kCapstan + 6, 49),
                      QPointF(kCapstan - 6, 49)}},
           pose);
}

void drawWippen(Sketch& s, double lift, double jackTilt) {
    const QTransform pose = Sketch::turned(-std::atan(lift / (kWippen.x() - kCapstan)) * 180 / M_PI, kWippen);
    s.metal(QPolygonF{{QPointF(279, 76), QPointF(279, 152)}}, 2, pose);                      // check wire
    s.metal(QPolygonF{{QPointF(268, 76), QPointF(262, 124), QPointF(268, 130)}}, 1.5, pose); // bridle wire
    s.wood(QPolygonF{{QPointF(272, 152), QPointF(285, 150), QPointF(285, 184), QPointF(272, 186)}}, pose); // check
    s.felt(QPolygonF{{QPointF(285, 151), QPointF(289, 152), QPointF(289, 182), QPointF(285, 183)}}, pose);
    s.wood(QPolygonF{{QPointF(260, 68), QPointF(322, 62), QPointF(324, 50), QPointF(356, 50), QPointF(358, 64),
                      QPointF(406, 72), QPointF(406, 86), QPointF(260, 79)}},
           pose);
    s.metal(QPolygonF{{QPointF(403, 84), QPointF(402, 96), QPointF(406, 104), QPointF(405, 110)}}, 2.5, pose); // spoon
    const QTransform jack = Sketch::turned(jackTilt, kJack) * pose;
    s.wood(QPolygonF{{QPointF(331, 82), QPointF(345, 80), QPointF(357, 149), QPointF(348, 152), QPointF(335, 96),
                      QPointF(314, 97), QPointF(313, 91)}},
           jack);
    s.disc(kJack, 2.5, pose);
    s.wood(QPolygonF{{QPointF(394, 80), QPointF(402, 80), QPointF(396, 114), QPointF(386, 114)}});
    s.disc(kWippen, 2.5);
}

void drawHammer(Sketch& s, double turn) {
    QTransform pose = Sketch::turned(turn, kButt);
    pose = QTransform::fromTranslate(kButt.x(), kButt.y()) * pose;
    s.metal(QPolygonF{{QPointF(-14, 6), QPointF(-66, 12)}}, 4, pose);
    s.wood(QPolygonF{{QPointF(-76, 0), QPointF(-64, -2), QPointF(-62, 26), QPointF(-74, 28)}}, pose);
    s.wood(QPolygonF{{QPointF(-3, 12), QPointF(3, 12), QPointF(3, 130), QPointF(-3, 130)}}, pose);
    s.wood(QPolygonF{{QPointF(-16, -7), QPointF(14, -9), QPointF(16, 10), QPointF(5, 24), QPointF(-8, 24),
                      QPointF(-20, 8)}},
           pose);
    QPainterPath felt(QPointF(4, 107));
    felt.cubicTo(34, 104, kHead, 114, kHead, kReach);
    felt.cubicTo(kHead, 136, 34, 146, 4, 143);
    felt.closeSubpath();
    s.felt(felt, pose);
    s.wood(QPolygonF{{QPointF(-20, 116), QPointF(6, 112), QPointF(32, 125), QPointF(6, 138), QPointF(-20, 134)}}, pose);
    s.wood(QPolygonF{{QPointF(362, 158), QPointF(370, 172), QPointF(388, 160), QPointF(388, 148)}});
    s.disc(kButt, 3);
}

void drawRestRail(Sketch& s, double turn) {
    const QTransform pose = QTransform::fromTranslate(kButt.x(), kButt.y()) * Sketch::turned(turn, kButt);
    s.felt(QPolygonF{{QPointF(-11, 78), QPointF(-4, 78), QPointF(-4, 102), QPointF(-11, 102)}}, pose);
    s.wood(QPolygonF{{QPointF(-34, 82), QPointF(-11, 82), QPointF(-11, 98), QPointF(-34, 98)}}, pose);
}

void drawDamper(Sketch& s, double off) {
    const QTransform pose = Sketch::turned(std::atan(off / 102) * 180 / M_PI, kDamper);
    s.wood(QPolygonF{{QPointF(408, 98), QPointF(414, 98), QPointF(409, 172), QPointF(400, 172), QPointF(400, 132)}},
           pose);
    s.metal(QPolygonF{{QPointF(404, 172), QPointF(406, 232)}}, 2, pose);
    s.wood(QPolygonF{{QPointF(402, 222), QPointF(412, 222), QPointF(412, 264), QPointF(402, 264)}}, pose);
    s.felt(QPolygonF{{QPointF(412, 223), QPointF(420, 228), QPointF(420, 258), QPointF(412, 263)}}, pose);
    s.disc(kDamper, 2.5);
}

} // namespace

QPainterPath uprightStrap(double gap, double slack) {
    const QTransform pose =
        QTransform::fromTranslate(kButt.x(), kButt.y()) * Sketch::turned(turnFor(gap < 0 ? kBlow : gap), kButt);
    const QPointF from = pose.map(QPointF(-50, 8)), to(265, 128);
    QPainterPath strap(from);
    strap.cubicTo(from + QPointF(-4, -slack), to + QPointF(16, -slack), to);
    return strap;
}

ActionPoints drawUpright(Sketch& s, const ActionPose& pose, bool ghostOfMoving) {
    const double lift = pose.lift >= 0 ? pose.lift : pose.keyDown * (kCapstan - kBalance.x()) / kBalance.x();
    const double restTurn = turnFor(kBlow * (1 - pose.railForward));
    const double turn = pose.gap < 0 ? restTurn : turnFor(pose.gap);
    if (!ghostOfMoving) {
        drawFrame(s);
        drawRestRail(s, restTurn);
        drawDamper(s, pose.damperOff);
        drawKey(s, pose.keyDown);
        drawWippen(s, lift, pose.jackTilt);
        s.metal(uprightStrap(turn == restTurn ? -1 : gapAt(turn), 12).toSubpathPolygons().first(), 0.6);
    }
    drawHammer(s, turn);
    ActionPoints points;
    const double a = turn * M_PI / 180;
    const auto fromButt = [&](double x, double y) {
        return kButt + QPointF(x * std::cos(a) - y * std::sin(a), x * std::sin(a) + y * std::cos(a));
    };
    points.crown = fromButt(kHead, kReach);
    points.coreTip = fromButt(32, kReach);
    points.string = {kString, points.crown.y()};
    points.keyFront = {0, 22 - pose.keyDown};
    points.damper = {420 - pose.damperOff, 243};
    points.capstan = {kCapstan, 49};
    points.keyAtCapstan = {kCapstan, 22};
    return points;
}

} // namespace hammerline
