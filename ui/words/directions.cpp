// Which way: the headline of a line of work, and the sentence that says what a turn does, by kind of action
// (bench-practice, direction table). Never "raise" or "lower" let-off, never left or right.
#include "ui/words/kinds_of_action.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

namespace {

QString directionText(const char* text) {
    return QCoreApplication::translate("directions", text);
}

using Holds = bool (*)(const Piano&);
using kind::any;
using kind::dropButton;
using kind::grand;
using kind::overdamper;
using kind::vertical;
bool unknownRocker(const Piano& p) {
    return p.capstan == Capstan::rocker && !turnOf(operation::capstanTurn, p);
}
bool fixed(const Piano& p) {
    return p.capstan == Capstan::fixed;
}
bool fixedInGrand(const Piano& p) {
    return fixed(p) && grand(p);
}
bool frontScrew(const Piano& p) {
    return p.vertical() && p.letOff == LetOffScrew::frontScrew;
}

using enum Direction;

struct Way {
    OperationId operation;
    bool positive;      // the sense of the operation's row
    Holds when;         // the first row that holds is meant
    const char* head;   // none: the direction's own word
    const char* how;    // how the hand moves; %1 is the turn
    const char* effect; // what the reading does
};

#define SAY(text) QT_TRANSLATE_NOOP("directions", text)
constexpr std::array kWays = {
    Way{operation::letOffTurn, false, frontScrew, SAY("OUT"), SAY("%1, seen from the screw's head"),
        SAY("nearer the string")},
    Way{operation::letOffTurn, true, frontScrew, SAY("IN"), SAY("%1, seen from the screw's head"),
        SAY("farther from the string")},
    Way{operation::letOffTurn, false, grand, SAY("OUT"), SAY("%1, seen from above"), SAY("nearer the string")},
    Way{operation::letOffTurn, true, grand, SAY("IN"), SAY("%1, seen from above"), SAY("farther from the string")},
    Way{operation::letOffTurn, false, any, SAY("OUT"), SAY("%1, seen from the screw's eye"), SAY("nearer the string")},
    Way{operation::letOffTurn, true, any, SAY("IN"), SAY("%1, seen from the screw's eye"),
        SAY("farther from the string")},
    Way{operation::dropTurn, true, any, SAY("IN"), SAY("%1, seen from above"), SAY("more drop")},
    Way{operation::dropTurn, false, any, SAY("OUT"), SAY("%1, seen from above"), SAY("less drop")},
    Way{operation::capstanTurn, true, fixedInGrand, SAY("ADD"), SAY("facing where the key meets the action"),
        SAY("shorter blow")},
    Way{operation::capstanTurn, false, fixedInGrand, SAY("TAKE OUT"), SAY("facing where the key meets the action"),
        SAY("longer blow")},
    Way{operation::capstanTurn, true, fixed, SAY("ADD"), SAY("facing where the key meets the action"),
        SAY("less lost motion")},
    Way{operation::capstanTurn, false, fixed, SAY("TAKE OUT"), SAY("facing where the key meets the action"),
        SAY("more lost motion")},
    Way{operation::capstanTurn, true, grand, SAY("UP"), SAY("%1, seen from above"), SAY("shorter blow")},
    Way{operation::capstanTurn, false, grand, SAY("DOWN"), SAY("%1, seen from above"), SAY("longer blow")},
    Way{operation::capstanTurn, true, dropButton, nullptr,
        SAY("the button on its wire, seen from above; then back a touch, never to zero"), SAY("less lost motion")},
    Way{operation::capstanTurn, false, dropButton, nullptr, SAY("the button on its wire, seen from above"),
        SAY("more lost motion")},
    Way{operation::capstanTurn, true, unknownRocker, SAY("UP"),
        SAY("tighten one screw, ease the other; the trial tells which"), SAY("less lost motion")},
    Way{operation::capstanTurn, false, unknownRocker, SAY("DOWN"), SAY("the other way round; the trial tells which"),
        SAY("more lost motion")},
    Way{operation::capstanTurn, true, any, SAY("UP"), SAY("%1, seen from above"), SAY("less lost motion")},
    Way{operation::capstanTurn, false, any, SAY("DOWN"), SAY("%1, seen from above"), SAY("more lost motion")},
    Way{operation::balancePunching, true, any, SAY("ADD"), SAY("paper under the felt at the balance pin"),
        SAY("key higher, dip deeper")},
    Way{operation::balancePunching, false, any, SAY("TAKE OUT"), SAY("paper from under the felt at the balance pin"),
        SAY("key lower, dip shallower")},
    Way{operation::frontPunching, true, any, SAY("ADD"), SAY("paper under the felt at the front pin"),
        SAY("dip shallower")},
    Way{operation::frontPunching, false, any, SAY("TAKE OUT"), SAY("paper from under the felt at the front pin"),
        SAY("dip deeper")},
    Way{operation::restRailShim, true, any, SAY("ADD"), SAY("thicker pads, the same at every bracket of the piece"),
        SAY("shorter blow, more lost motion")},
    Way{operation::restRailShim, false, any, SAY("TAKE OUT"),
        SAY("thinner pads, the same at every bracket of the piece"), SAY("longer blow, less lost motion")},
    Way{operation::railClothShim, true, any, SAY("ADD"), SAY("cloth on the rail behind this shank"),
        SAY("shorter blow")},
    Way{operation::railClothShim, false, any, SAY("TAKE OUT"), SAY("cloth on the rail behind this shank"),
        SAY("longer blow")},
    Way{operation::checkBend, true, vertical, SAY("TOWARD"), SAY("the check toward the catcher"),
        SAY("checks nearer the string")},
    Way{operation::checkBend, false, vertical, SAY("AWAY"), SAY("the check away from the catcher"),
        SAY("checks farther from the string")},
    Way{operation::checkBend, true, any, SAY("TOWARD"), SAY("the check toward the hammer tail"),
        SAY("checks nearer the string")},
    Way{operation::checkBend, false, any, SAY("AWAY"), SAY("the check away from the hammer tail"),
        SAY("checks farther from the string")},
    Way{operation::spoonBend, true, any, SAY("TOWARD"), SAY("the spoon toward the damper lever"),
        SAY("damper earlier")},
    Way{operation::spoonBend, false, any, SAY("AWAY"), SAY("the spoon away from the damper lever"),
        SAY("damper later")},
    // An overdamper is timed by the button on its wire, a grand's by its lever on the wire, never by bending a head.
    Way{operation::damperWire, true, overdamper, SAY("LATER"),
        SAY("the button down on its wire, clockwise seen from above"), SAY("stirs later by the pedal")},
    Way{operation::damperWire, false, overdamper, SAY("EARLIER"),
        SAY("the button up on its wire, anticlockwise seen from above"), SAY("stirs earlier by the pedal")},
    Way{operation::damperWire, true, grand, SAY("LATER"), SAY("the lever higher on its wire"),
        SAY("stirs later by the pedal")},
    Way{operation::damperWire, false, grand, SAY("EARLIER"), SAY("the lever lower on its wire"),
        SAY("stirs earlier by the pedal")},
    Way{operation::damperWire, true, any, SAY("TOWARD"), SAY("the head toward the strings"),
        SAY("stirs later by the pedal")},
    Way{operation::damperWire, false, any, SAY("AWAY"), SAY("the head away from the strings"),
        SAY("stirs earlier by the pedal")},
    Way{operation::bridleBend, true, any, SAY("AWAY"), SAY("the wire away from the butt"), SAY("strap tighter")},
    Way{operation::bridleBend, false, any, SAY("TOWARD"), SAY("the wire toward the butt"), SAY("strap slacker")},
    Way{operation::balanceRailShim, true, any, SAY("ADD"), SAY("card under the balance rail at its screws"),
        SAY("keys higher, dip deeper")},
    Way{operation::balanceRailShim, false, any, SAY("TAKE OUT"), SAY("card from under the balance rail at its screws"),
        SAY("keys lower, dip shallower")},
    Way{operation::backRailShim, true, any, SAY("ADD"), SAY("card under the back-rail cloth"),
        SAY("key fronts lower, dip shallower, less lost motion")},
    Way{operation::backRailShim, false, any, SAY("TAKE OUT"), SAY("card from under the back-rail cloth"),
        SAY("key fronts higher, dip deeper, more lost motion")},
    Way{operation::playerScrew, true, any, SAY("FARTHER"), SAY("the finger away from the part it works"),
        SAY("more clearance")},
    Way{operation::playerScrew, false, any, SAY("NEARER"), SAY("the finger toward the part it works"),
        SAY("less clearance")},
    Way{operation::halfBlowRod, true, any, SAY("LONGER"), SAY("the soft-pedal rod"), SAY("the rail goes farther")},
    Way{operation::halfBlowRod, false, any, SAY("SHORTER"), SAY("the soft-pedal rod"), SAY("the rail goes less far")},
    Way{operation::pedalRod, true, any, SAY("LONGER"), SAY("the damper rod"), SAY("dampers rise more")},
    Way{operation::pedalRod, false, any, SAY("SHORTER"), SAY("the damper rod"), SAY("dampers rise less")},
    Way{operation::leverTiming, false, any, SAY("EARLIER"), SAY("the underlever nearer the key end"),
        SAY("damper earlier")},
    Way{operation::leverTiming, true, any, SAY("LATER"), SAY("the underlever farther from the key end"),
        SAY("damper later")},
    Way{operation::inspect, true, any, SAY("LOOK"), SAY("no adjustment answers this reading"), SAY("find the part")},
};
// For a direction that has no row above: by value of Direction.
constexpr std::array<const char*, 15> kHeads = {SAY("CLOCKWISE"), SAY("ANTICLOCKWISE"), SAY("ADD"),    SAY("TAKE OUT"),
                                                SAY("TOWARD"),    SAY("AWAY"),          SAY("IN"),     SAY("OUT"),
                                                SAY("LONGER"),    SAY("SHORTER"),       SAY("NEARER"), SAY("FARTHER"),
                                                SAY("EARLIER"),   SAY("LATER"),         SAY("LOOK")};
#undef SAY

const Way* wayOf(OperationId operation, Direction direction, const Piano& piano) {
    const bool positive = direction == directionOf(operation, 1, piano);
    if (!positive && direction != directionOf(operation, -1, piano)) return nullptr;
    for (const Way& way : kWays)
        if (way.operation == operation && way.positive == positive && way.when(piano)) return &way;
    return nullptr;
}

QString headOf(const Way* way, Direction direction) {
    return directionText(way && way->head ? way->head : kHeads.at(static_cast<std::size_t>(direction)));
}

QString howOf(const Way& way, const Piano& piano) {
    const QString how = directionText(way.how);
    const auto turn = turnOf(way.operation, piano);
    if (!turn || !how.contains(QLatin1String("%1"))) return how;
    return how.arg(turnName(way.positive == (*turn == Turn::clockwise) ? Turn::clockwise : Turn::anticlockwise));
}

} // namespace

Sign signOf(OperationId operation, Direction direction, const Piano& piano) {
    switch (direction) {
    case in:
    case out:
        return (direction == in) == (turnOf(operation, piano) != Turn::anticlockwise) ? Sign::clockwise
                                                                                      : Sign::anticlockwise;
    case clockwise:
        return Sign::clockwise;
    case anticlockwise:
        return Sign::anticlockwise;
    case add:
    case longer:
    case farther:
        return Sign::add;
    case remove:
    case shorter:
    case nearer:
        return Sign::remove;
    case toward:
    case earlier:
        return Sign::toward;
    case away:
    case later:
        return Sign::away;
    case Direction::inspect:
        return Sign::look;
    }
    return Sign::none;
}

QString turnName(Turn turn) {
    return directionText(turn == Turn::clockwise ? QT_TRANSLATE_NOOP("directions", "clockwise")
                                                 : QT_TRANSLATE_NOOP("directions", "anticlockwise"));
}

QString positiveName(OperationId operation, const Piano& piano) {
    if (unitOf(operation, piano) != AmountUnit::turn) return {};
    return directionText(operation == operation::capstanTurn ? QT_TRANSLATE_NOOP("directions", "UP")
                                                             : QT_TRANSLATE_NOOP("directions", "IN"));
}

QString directionWord(Direction direction, OperationId operation, const Piano& piano) {
    const Way* way = wayOf(operation, direction, piano);
    return headOf(way, direction);
}

QString directionEffect(Direction direction, OperationId operation, const Piano& piano) {
    const Way* way = wayOf(operation, direction, piano);
    return way ? directionText(way->effect) : QString{};
}

QString directionEffect(const Step& step, const Piano& piano) {
    const Direction meant = step.opposite ? otherWay(step.operation, step.direction, piano) : step.direction;
    return directionEffect(meant, step.operation, piano);
}

// "OUT = anticlockwise, seen from the screw's eye: nearer the string."
QString directionSentence(OperationId operation, Direction direction, const Piano& piano, bool opposite) {
    const Way* way = wayOf(operation, direction, piano);
    if (!way) return {};
    const char* form = opposite ? QT_TRANSLATE_NOOP("directions", "%1 = %2: %3, for here it has answered the other way "
                                                                  "round.")
                                : QT_TRANSLATE_NOOP("directions", "%1 = %2: %3.");
    const Direction meant = opposite ? otherWay(operation, direction, piano) : direction;
    return directionText(form).arg(headOf(way, direction), howOf(*way, piano),
                                   directionEffect(meant, operation, piano));
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
