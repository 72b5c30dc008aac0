// The rows of the catalogue of operations (computation 7; minutes bench-practice 2.7, trials and caps 2.5).
#include "core/operation/operation.h"

#include <algorithm>

namespace hammerline {

namespace {

using namespace dimension;
using D = DimensionId;

// What a person has to look at again after the operation; `fitted` takes out what this action has not got.
// A punching or shim under the balance felt also changes how soon the key's end meets a grand's damper lever.
constexpr std::array kKeyRaised = {keyHeight, sharpHeight, keyDip,      lostMotion, blow,    aftertouch,
                                   checking,  sharpProud,  damperStart, downWeight, upWeight};
constexpr std::array kDipDisturbs = {keyDip, aftertouch, checking, sharpProud};
constexpr std::array kCapstanDisturbs = {lostMotion, blow, aftertouch, checking, playerClearance};
constexpr std::array kRailDisturbs = {blow, damperStart, lostMotion, halfBlow, strap};
constexpr std::array kRailClothDisturbs = {blow, damperStart, lostMotion};
constexpr std::array kLetOffDisturbs = {letOff, aftertouch, drop};
constexpr std::array kDropDisturbs = {drop};
constexpr std::array kCheckDisturbs = {checking};
constexpr std::array kSpoonDisturbs = {damperStart, downWeight};
constexpr std::array kDamperWireDisturbs = {damperStart, damperRise};
constexpr std::array kStrapDisturbs = {strap};
// A pressed key does not touch the back rail: aftertouch and checking stay (computation 5).
constexpr std::array kBackDisturbs = {keyHeight, sharpHeight, keyDip, lostMotion, blow, damperStart, playerClearance};
constexpr std::array kPlayerDisturbs = {playerClearance};
constexpr std::array kHalfBlowDisturbs = {halfBlow, strap};
constexpr std::array kPedalDisturbs = {damperRise};
constexpr std::array kTimingDisturbs = {damperStart, downWeight};

using enum AmountUnit;
using enum Access;

// id, unit, common, access, minutes, first trial, cap per go, stop if, disturbs, step of an upright, what it
// serves
constexpr std::array kOperations = {
    Operation{
        operation::balancePunching, mm, false, oneKey, {1.2, 2.5}, 0, 0, "sharp-proud", kKeyRaised, "U9", keyHeight},
    Operation{
        operation::frontPunching, mm, false, oneKey, {0.8, 1.5}, 0, 0, "sharp-proud", kDipDisturbs, "U12", keyDip},
    Operation{operation::capstanTurn,
              turn,
              false,
              actionIn,
              {0.5, 1.2},
              0.25,
              0.5,
              "capstan-thread",
              kCapstanDisturbs,
              "U10",
              lostMotion},
    Operation{operation::restRailShim, mm, true, actionIn, {35, 60}, 0, 2, "rail-seated", kRailDisturbs, "U8", blow},
    Operation{
        operation::railClothShim, mm, false, actionIn, {2, 4}, 0, 2, "rail-seated", kRailClothDisturbs, "U8", blow},
    Operation{operation::letOffTurn,
              turn,
              false,
              actionIn,
              {0.5, 1.2},
              0.125,
              0.25,
              "eye-twists",
              kLetOffDisturbs,
              "U11",
              letOff},
    Operation{operation::dropTurn,
              turn,
              false,
              actionIn,
              {0.4, 0.8},
              0.125,
              0.25,
              "weak-spring-first",
              kDropDisturbs,
              "",
              drop},
    Operation{operation::checkBend,
              mm,
              false,
              actionIn,
              {0.5, 1.2},
              0,
              2,
              "wire-bent-twice",
              kCheckDisturbs,
              "U14",
              checking},
    Operation{operation::spoonBend,
              mm,
              false,
              actionTilted,
              {0.7, 2},
              0.2,
              0.4,
              "wire-bent-twice",
              kSpoonDisturbs,
              "U16",
              damperStart},
    Operation{operation::damperWire,
              none,
              false,
              actionIn,
              {2, 5},
              0,
              0,
              "wire-bent-twice",
              kDamperWireDisturbs,
              "U15",
              damperRise},
    Operation{operation::bridleBend,
              none,
              false,
              actionIn,
              {0.2, 0.5},
              0,
              0,
              "wire-bent-twice",
              kStrapDisturbs,
              "U17",
              strap},
    Operation{
        operation::balanceRailShim, mm, true, keysOff, {45, 90}, 0, 0, "rail-screws", kKeyRaised, "U9", keyHeight},
    Operation{
        operation::backRailShim, mm, true, keysOff, {60, 120}, 0, 0, "rail-screws", kBackDisturbs, "U4", lostMotion},
    Operation{operation::playerScrew,
              none,
              false,
              stackIn,
              {0.4, 0.8},
              0,
              0,
              "stack-seated",
              kPlayerDisturbs,
              "U19",
              playerClearance},
    Operation{
        operation::halfBlowRod, none, true, actionIn, {15, 30}, 0, 0, "key-winks", kHalfBlowDisturbs, "U17", halfBlow},
    Operation{operation::pedalRod,
              none,
              true,
              actionIn,
              {15, 30},
              0,
              0,
              "pedal-free-play",
              kPedalDisturbs,
              "U17",
              damperRise},
    Operation{
        operation::leverTiming, none, false, actionOut, {2, 5}, 0, 0, "lever-free", kTimingDisturbs, "", damperStart},
    Operation{operation::inspect, none, false, actionIn, {2, 4}, 0, 0, "", {}, "U1", keyHeight},
};

static_assert(kOperations.size() == kOperationCount);

constexpr bool rowsAtTheirPlace() {
    for (std::size_t i = 0; i < kOperations.size(); ++i)
        if (kOperations[i].id.row != i) return false;
    return true;
}
static_assert(rowsAtTheirPlace());

} // namespace

bool disturbs(OperationId id, DimensionId dimension, const Piano& piano) {
    // On a vertical the hammers rest on the rail: key and capstan change the lost motion, not the blow.
    if (dimension == blow && piano.vertical() && row(id).serves != blow) return false;
    const auto& disturbed = row(id).disturbs;
    return std::find(disturbed.begin(), disturbed.end(), dimension) != disturbed.end();
}

bool disturbs(OperationId id, NoteNumber at, Cell cell, const Piano& piano) {
    if (at == cell.note) return disturbs(id, cell.dimension, piano);
    if (cell.dimension != sharpHeight || !disturbs(id, keyHeight, piano)) return false;
    const std::vector<NoteNumber> naturals = neighbouringNaturals(cell.note, piano);
    return std::find(naturals.begin(), naturals.end(), at) != naturals.end();
}

std::span<const Operation> operations() {
    return kOperations;
}

const Operation& row(OperationId id) {
    return kOperations.at(id.row);
}

} // namespace hammerline
