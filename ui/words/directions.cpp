// Which way: the headline of a line of work, and the sentence that says what a turn does, by kind of action
// (bench-practice, direction table). Never "raise" or "lower" let-off, never left or right.
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

namespace {

QString directionText(const char* text) {
    return QCoreApplication::translate("directions", text);
}

using Holds = bool (*)(const Piano&);
bool any(const Piano&) {
    return true;
}
bool vertical(const Piano& p) {
    return p.vertical();
}
bool grand(const Piano& p) {
    return !p.vertical();
}
bool dropButton(const Piano& p) {
    return p.capstan == Capstan::dropButton;
}
bool rocker(const Piano& p) {
    return p.capstan == Capstan::rocker;
}
bool frontScrew(const Piano& p) {
    return p.vertical() && p.letOff == LetOffScrew::frontScrew;
}

using enum Direction;

struct Way {
    OperationId operation;
    Direction direction;
    Holds when; // the first row that holds is meant
    const char* head;
    const char* how;    // how the hand moves
    const char* effect; // what the reading does
};

#define SAY(text) QT_TRANSLATE_NOOP("directions", text)
constexpr std::array kWays = {
    Way{operation::letOffTurn, out, frontScrew, SAY("OUT"), SAY("anticlockwise, seen from the screw's head"),
        SAY("nearer the string")},
    Way{operation::letOffTurn, in, frontScrew, SAY("IN"), SAY("clockwise, seen from the screw's head"),
        SAY("farther from the string")},
    Way{operation::letOffTurn, out, any, SAY("OUT"), SAY("anticlockwise, seen from the screw's eye"),
        SAY("nearer the string")},
    Way{operation::letOffTurn, in, any, SAY("IN"), SAY("clockwise, seen from the screw's eye"),
        SAY("farther from the string")},
    Way{operation::dropTurn, in, any, SAY("IN"), SAY("clockwise, seen from the screw's head"), SAY("more drop")},
    Way{operation::dropTurn, out, any, SAY("OUT"), SAY("anticlockwise, seen from the screw's head"), SAY("less drop")},
    Way{operation::capstanTurn, anticlockwise, grand, SAY("UP"), SAY("anticlockwise, seen from above"),
        SAY("shorter blow")},
    Way{operation::capstanTurn, clockwise, grand, SAY("DOWN"), SAY("clockwise, seen from above"), SAY("longer blow")},
    Way{operation::capstanTurn, clockwise, dropButton, SAY("CLOCKWISE"),
        SAY("the button on its wire, seen from above; then back a touch, never to zero"), SAY("less lost motion")},
    Way{operation::capstanTurn, anticlockwise, dropButton, SAY("ANTICLOCKWISE"),
        SAY("the button on its wire, seen from above"), SAY("more lost motion")},
    Way{operation::capstanTurn, clockwise, rocker, SAY("UP"),
        SAY("tighten one screw, ease the other; the trial tells which"), SAY("less lost motion")},
    Way{operation::capstanTurn, anticlockwise, rocker, SAY("DOWN"), SAY("the other way round; the trial tells which"),
        SAY("more lost motion")},
    Way{operation::capstanTurn, anticlockwise, any, SAY("UP"), SAY("anticlockwise, seen from above"),
        SAY("less lost motion")},
    Way{operation::capstanTurn, clockwise, any, SAY("DOWN"), SAY("clockwise, seen from above"),
        SAY("more lost motion")},
    Way{operation::capstanTurn, add, grand, SAY("ADD"), SAY("facing where the key meets the action"),
        SAY("shorter blow")},
    Way{operation::capstanTurn, remove, grand, SAY("TAKE OUT"), SAY("facing where the key meets the action"),
        SAY("longer blow")},
    Way{operation::capstanTurn, add, any, SAY("ADD"), SAY("facing where the key meets the action"),
        SAY("less lost motion")},
    Way{operation::capstanTurn, remove, any, SAY("TAKE OUT"), SAY("facing where the key meets the action"),
        SAY("more lost motion")},
    Way{operation::balancePunching, add, any, SAY("ADD"), SAY("paper under the felt at the balance pin"),
        SAY("key higher, dip deeper")},
    Way{operation::balancePunching, remove, any, SAY("TAKE OUT"), SAY("paper from under the felt at the balance pin"),
        SAY("key lower, dip shallower")},
    Way{operation::frontPunching, add, any, SAY("ADD"), SAY("paper under the felt at the front pin"),
        SAY("dip shallower")},
    Way{operation::frontPunching, remove, any, SAY("TAKE OUT"), SAY("paper from under the felt at the front pin"),
        SAY("dip deeper")},
    Way{operation::restRailShim, add, any, SAY("ADD"), SAY("thicker pads, the same at every bracket of the piece"),
        SAY("shorter blow, more lost motion")},
    Way{operation::restRailShim, remove, any, SAY("TAKE OUT"),
        SAY("thinner pads, the same at every bracket of the piece"), SAY("longer blow, less lost motion")},
    Way{operation::railClothShim, add, any, SAY("ADD"), SAY("cloth on the rail behind this shank"),
        SAY("shorter blow")},
    Way{operation::railClothShim, remove, any, SAY("TAKE OUT"), SAY("cloth on the rail behind this shank"),
        SAY("longer blow")},
    Way{operation::checkBend, toward, vertical, SAY("TOWARD"), SAY("the check toward the catcher"),
        SAY("checks nearer the string")},
    Way{operation::checkBend, away, vertical, SAY("AWAY"), SAY("the check away from the catcher"),
        SAY("checks farther from the string")},
    Way{operation::checkBend, toward, any, SAY("TOWARD"), SAY("the check toward the hammer tail"),
        SAY("checks nearer the string")},
    Way{operation::checkBend, away, any, SAY("AWAY"), SAY("the check away from the hammer tail"),
        SAY("checks farther from the string")},
    Way{operation::spoonBend, toward, any, SAY("TOWARD"), SAY("the spoon toward the damper lever"),
        SAY("damper earlier")},
    Way{operation::spoonBend, away, any, SAY("AWAY"), SAY("the spoon away from the damper lever"), SAY("damper later")},
    Way{operation::damperWire, toward, any, SAY("TOWARD"), SAY("the head toward the strings"),
        SAY("stirs later by the pedal")},
    Way{operation::damperWire, away, any, SAY("AWAY"), SAY("the head away from the strings"),
        SAY("stirs earlier by the pedal")},
    Way{operation::bridleBend, away, any, SAY("AWAY"), SAY("the wire away from the butt"), SAY("strap tighter")},
    Way{operation::bridleBend, toward, any, SAY("TOWARD"), SAY("the wire toward the butt"), SAY("strap slacker")},
    Way{operation::balanceRailShim, add, any, SAY("ADD"), SAY("card under the balance rail at its screws"),
        SAY("keys higher, dip deeper")},
    Way{operation::balanceRailShim, remove, any, SAY("TAKE OUT"), SAY("card from under the balance rail at its screws"),
        SAY("keys lower, dip shallower")},
    Way{operation::backRailShim, add, any, SAY("ADD"), SAY("card under the back-rail cloth"),
        SAY("key fronts lower, dip shallower, less lost motion")},
    Way{operation::backRailShim, remove, any, SAY("TAKE OUT"), SAY("card from under the back-rail cloth"),
        SAY("key fronts higher, dip deeper, more lost motion")},
    Way{operation::playerScrew, farther, any, SAY("FARTHER"), SAY("the finger away from the part it works"),
        SAY("more clearance")},
    Way{operation::playerScrew, nearer, any, SAY("NEARER"), SAY("the finger toward the part it works"),
        SAY("less clearance")},
    Way{operation::halfBlowRod, longer, any, SAY("LONGER"), SAY("the soft-pedal rod"), SAY("the rail goes farther")},
    Way{operation::halfBlowRod, shorter, any, SAY("SHORTER"), SAY("the soft-pedal rod"), SAY("the rail goes less far")},
    Way{operation::pedalRod, longer, any, SAY("LONGER"), SAY("the damper rod"), SAY("dampers rise more")},
    Way{operation::pedalRod, shorter, any, SAY("SHORTER"), SAY("the damper rod"), SAY("dampers rise less")},
    Way{operation::leverTiming, earlier, any, SAY("EARLIER"), SAY("the underlever nearer the key end"),
        SAY("damper earlier")},
    Way{operation::leverTiming, later, any, SAY("LATER"), SAY("the underlever farther from the key end"),
        SAY("damper later")},
    Way{operation::inspect, Direction::inspect, any, SAY("LOOK"), SAY("no adjustment answers this reading"),
        SAY("find the part")},
};
// For a direction that has no row above: by value of Direction.
constexpr std::array<const char*, 15> kHeads = {SAY("CLOCKWISE"), SAY("ANTICLOCKWISE"), SAY("ADD"),    SAY("TAKE OUT"),
                                                SAY("TOWARD"),    SAY("AWAY"),          SAY("IN"),     SAY("OUT"),
                                                SAY("LONGER"),    SAY("SHORTER"),       SAY("NEARER"), SAY("FARTHER"),
                                                SAY("EARLIER"),   SAY("LATER"),         SAY("LOOK")};
#undef SAY

const Way* wayOf(OperationId operation, Direction direction, const Piano& piano) {
    for (const Way& way : kWays)
        if (way.operation == operation && way.direction == direction && way.when(piano)) return &way;
    return nullptr;
}

/// "OUT = anticlockwise, seen from the screw's eye: nearer the string."
QString sentenceOf(const Way& way) {
    return QCoreApplication::translate("directions", "%1 = %2: %3.")
        .arg(directionText(way.head), directionText(way.how), directionText(way.effect));
}

} // namespace

QString directionWord(Direction direction, OperationId operation) {
    // Without a piano a capstan is taken as the usual screw of an upright.
    const Piano usual;
    return directionWord(direction, operation, usual);
}

QString directionWord(Direction direction, OperationId operation, const Piano& piano) {
    const Way* way = wayOf(operation, direction, piano);
    return directionText(way ? way->head : kHeads.at(static_cast<std::size_t>(direction)));
}

QString directionEffect(Direction direction, OperationId operation, const Piano& piano) {
    const Way* way = wayOf(operation, direction, piano);
    return way ? directionText(way->effect) : QString{};
}

QString directionEffect(const Step& step, const Piano& piano) {
    const Direction meant = step.opposite ? otherWay(step.operation, step.direction, piano) : step.direction;
    return directionEffect(meant, step.operation, piano);
}

QString directionSentence(OperationId operation, Direction direction, const Piano& piano, bool opposite) {
    const Way* way = wayOf(operation, direction, piano);
    if (!way || !opposite) return way ? sentenceOf(*way) : QString{};
    return QCoreApplication::translate("directions", "%1 = %2: %3, for here it has answered the other way round.")
        .arg(directionText(way->head), directionText(way->how),
             directionEffect(otherWay(operation, direction, piano), operation, piano));
}

QString directionSentence(OperationId operation, const Piano& piano) {
    QString both;
    for (const double amount : {-1.0, 1.0}) {
        const QString one = directionSentence(operation, directionOf(operation, amount, piano), piano);
        if (both.contains(one)) continue;
        both += both.isEmpty() ? one : QLatin1Char(' ') + one;
    }
    return both;
}

QString aimText(const Step& step) {
    if (!step.aim) return {};
    const Dimension& dimension = row(step.aimDimension);
    return shown(step.aimDimension, fromTrade(*step.aim, dimension.kind));
}

QString headline(const Step& step, const Piano& piano) {
    const QString word = directionWord(step.direction, step.operation, piano);
    const QString effect = directionEffect(step, piano);
    if (step.aim && !effect.isEmpty())
        return QCoreApplication::translate("directions", "%1, set to %2, %3").arg(word, aimText(step), effect);
    if (step.aim) return QCoreApplication::translate("directions", "%1, set to %2").arg(word, aimText(step));
    return effect.isEmpty() ? word : QCoreApplication::translate("directions", "%1, %2").arg(word, effect);
}

} // namespace hammerline::words
