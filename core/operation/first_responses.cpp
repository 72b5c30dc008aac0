// What one unit of each operation does before anything is learned (computation 5, 7; bands bench-practice 2.5).
#include "core/operation/operation.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

using namespace dimension;

// mm of checking per mm of aftertouch: about 1.6 to 4 (computation 7); learned later.
constexpr double kCheckingPerAftertouch = 2.5, kCheckingPerAftertouchSd = 1.0;

// First guesses of bench-practice 2.5 with the band read as one standard deviation either side. Common practice, no
// source. Turns.
constexpr double kCapstanNatural = 2.0, kCapstanSharp = 1.8, kCapstanSd = 0.8;
constexpr double kButton = 1.2, kButtonSd = 0.6;
constexpr double kRockerSd = 1.5;
constexpr double kGrandCapstan = 10, kGrandCapstanSd = 4;
constexpr double kLetOffTurns = 6, kLetOffTurnsSd = 3;
// A drop screw: pitch of some 0.8 mm times the lever ratio of about 5.6 at the crown, 2 to 7 mm a turn (derived).
constexpr double kDropTurns = 4.5, kDropTurnsSd = 1.25;
constexpr double kCheckTurns = 3, kCheckTurnsSd = 1.5;
constexpr double kSpoonTurns = 12, kSpoonTurnsSd = 6;
constexpr double kRailFactorSd = 0.125;

struct Colour {
    KeyColour colour;
    KeyLever lever;
    double ratio; // hammer : key front
    double arms;  // relative sd of the arms: measured ones are known to some 2 per cent, default ones to 8
};

void addChecking(std::vector<Effect>& effects, double perAftertouch) {
    effects.push_back(
        {checking, -kCheckingPerAftertouch * perAftertouch, kCheckingPerAftertouchSd * std::abs(perAftertouch)});
}

/// A shim under the balance pin, single (punching) or common (rail): computation 5.
Response balance(OperationId id, const Piano& piano, const Colour& c) {
    const DimensionId height = c.colour == KeyColour::natural ? keyHeight : sharpHeight;
    Response response{id, c.colour, {}};
    const auto effect = [&](DimensionId d, double perUnit) {
        response.effects.push_back({d, perUnit, c.arms * std::abs(perUnit)});
    };
    effect(height, c.lever.heightPerBalance);
    effect(keyDip, c.lever.dipPerBalance);
    if (piano.vertical())
        effect(lostMotion, -c.lever.lostPerBalance);
    else
        effect(blow, -c.ratio * c.lever.lostPerBalance);
    effect(aftertouch, c.lever.afterPerBalance);
    addChecking(response.effects, c.lever.afterPerBalance);
    return response;
}

Response front(const Colour& c) {
    const double fall = c.lever.dipPerFront;
    Response response{operation::frontPunching, c.colour, {}};
    response.effects = {{keyDip, -fall, 0.03 * fall}, {aftertouch, -fall, 0.03 * fall}};
    addChecking(response.effects, -fall);
    return response;
}

Response back(const Piano& piano, const Colour& c) {
    const DimensionId height = c.colour == KeyColour::natural ? keyHeight : sharpHeight;
    const double fall = c.lever.heightPerBack, sd = c.arms * fall;
    Response response{operation::backRailShim, c.colour, {}};
    response.effects = {{height, -fall, sd}, {keyDip, -fall, sd}};
    response.effects.push_back(piano.vertical() ? Effect{lostMotion, -fall, sd}
                                                : Effect{blow, -c.ratio * fall, c.ratio * sd});
    return response;
}

/// One unit up: a turn, or a millimetre of facing on a fixed capstan (computation 5: F/C at the key front).
Response capstan(const Piano& piano, const Colour& c) {
    double perUnit = c.colour == KeyColour::natural ? kCapstanNatural : kCapstanSharp, sd = kCapstanSd;
    if (!piano.vertical()) {
        perUnit = kGrandCapstan / c.ratio;
        sd = kGrandCapstanSd / c.ratio;
    }
    if (piano.capstan == Capstan::dropButton) {
        perUnit = kButton;
        sd = kButtonSd;
    }
    if (piano.capstan == Capstan::rocker) sd = kRockerSd;
    if (piano.capstan == Capstan::fixed) {
        perUnit = c.lever.lostPerCapstan;
        sd = c.arms * perUnit;
    }
    Response response{operation::capstanTurn, c.colour, {}};
    if (piano.vertical())
        response.effects = {{lostMotion, -perUnit, sd}, {aftertouch, perUnit, sd}};
    else
        response.effects = {{blow, -c.ratio * perUnit, c.ratio * sd}, {aftertouch, perUnit, sd}};
    addChecking(response.effects, perUnit);
    return response;
}

/// Pads (or cloth) of the rest rail: longer arm to the hammer's crown than to the pads, k. The damper starts by the
/// wippen, so its hammer travel is shortened by as much as the blow.
Response rail(OperationId id, const Piano& piano, const Colour& c) {
    const double k = piano.railFactor;
    return {id,
            c.colour,
            {{blow, -k, kRailFactorSd},
             {damperStart, -k, kRailFactorSd},
             {lostMotion, k / c.ratio, kRailFactorSd / c.ratio}}};
}

Response letOffScrew(const Piano& piano, const Colour& c) {
    Response response{
        operation::letOffTurn,
        c.colour,
        {{letOff, kLetOffTurns, kLetOffTurnsSd}, {aftertouch, kLetOffTurns / c.ratio, kLetOffTurnsSd / c.ratio}}};
    // The drop from the string is set by the drop screw alone: what let-off gains, drop below let-off loses.
    if (!piano.vertical()) response.effects.push_back({drop, -kLetOffTurns, kLetOffTurnsSd});
    return response;
}

using Guess = Response (*)(const Piano&, const Colour&);
struct Row {
    OperationId operation;
    Guess guess;
};
constexpr std::array kFirstGuesses = {
    Row{operation::balancePunching,
        [](const Piano& p, const Colour& c) { return balance(operation::balancePunching, p, c); }},
    Row{operation::frontPunching, [](const Piano&, const Colour& c) { return front(c); }},
    Row{operation::capstanTurn, capstan},
    Row{operation::restRailShim, [](const Piano& p, const Colour& c) { return rail(operation::restRailShim, p, c); }},
    Row{operation::railClothShim, [](const Piano& p, const Colour& c) { return rail(operation::railClothShim, p, c); }},
    Row{operation::letOffTurn, letOffScrew},
    Row{operation::balanceRailShim,
        [](const Piano& p, const Colour& c) { return balance(operation::balanceRailShim, p, c); }},
    Row{operation::backRailShim, back},
};

struct Plain {
    OperationId operation;
    Effect effect;
};
// Operations with one dimension of their own. Those of unit `none` are set by looking: a sign, no magnitude.
constexpr std::array kPlain = {
    Plain{operation::dropTurn, {drop, kDropTurns, kDropTurnsSd}},
    Plain{operation::checkBend, {checking, -kCheckTurns, kCheckTurnsSd}},
    Plain{operation::spoonBend, {damperStart, -kSpoonTurns, kSpoonTurnsSd}},
    Plain{operation::damperWire, {damperRise, -1, 1}},
    Plain{operation::bridleBend, {strap, -1, 1}},
    Plain{operation::playerScrew, {playerClearance, 1, 1}},
    Plain{operation::halfBlowRod, {halfBlow, 1, 1}},
    Plain{operation::pedalRod, {damperRise, 1, 1}},
    Plain{operation::leverTiming, {damperStart, 1, 1}},
};

/// Every effect follows the answer; checking is as uncertain as it was, for it follows the aftertouch.
void guessFromOthers(Response& response, const TaughtFigure& taught) {
    const Effect customary = response.effects.front();
    for (Effect& effect : response.effects) {
        const bool follows = effect.dimension == checking && customary.dimension != checking;
        effect.sd = follows ? effect.sd * taught.value : std::abs(effect.perUnit) * taught.sd;
        effect.perUnit *= taught.value;
    }
    const double low = customary.perUnit * taught.low95, high = customary.perUnit * taught.high95;
    response.others = GuessOfOthers{taught.pianos, std::min(low, high), std::max(low, high), customary};
}

} // namespace

std::vector<Response> firstResponses(const Piano& piano, std::array<double, 2> ratio) {
    std::vector<Response> responses;
    for (const Row& guess : kFirstGuesses) {
        if (!applies(guess.operation, piano)) continue;
        for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp}) {
            const KeyArms& arms = piano.armsOf(colour);
            responses.push_back(guess.guess(piano, {colour, keyLever(arms), ratio[static_cast<std::size_t>(colour)],
                                                    arms.allMeasured() ? 0.02 : 0.08}));
        }
    }
    for (const Plain& plain : kPlain)
        if (applies(plain.operation, piano)) responses.push_back({plain.operation, std::nullopt, {plain.effect}});
    for (Response& response : responses)
        if (const auto taught = piano.taught.answers.find(std::string(key(response.operation)));
            taught != piano.taught.answers.end())
            guessFromOthers(response, taught->second);
    return responses;
}

} // namespace hammerline
