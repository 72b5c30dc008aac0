// The order of work as graphs in data: what a step needs before it, and what it disturbs (bench-practice 2.8).
#include "core/operation/operation.h"

#include <algorithm>

namespace hammerline {

namespace {

using namespace dimension;
using Ids = std::string_view;

// needs
constexpr std::array<Ids, 0> kNone{};
constexpr std::array<Ids, 1> nU0 = {"U0"}, nU1 = {"U1"}, nU4 = {"U4"}, nU6 = {"U6"}, nU7 = {"U7"}, nU8 = {"U8"},
                             nU10 = {"U10"}, nU18 = {"U18"};
constexpr std::array<Ids, 3> nU6List = {"U2", "U3", "U4"};
constexpr std::array<Ids, 2> nU9 = {"U5", "U8"}, nU10List = {"U8", "U9"}, nU12 = {"U9", "U11"}, nU13 = {"U11", "U12"},
                             nU14 = {"U12", "U13"};
constexpr std::array<Ids, 4> nU16 = {"U15", "U10", "U8", "U12"};
constexpr std::array<Ids, 3> nAll = {"U14", "U16", "U17"};

// disturbs
constexpr std::array everything = {keyHeight,  sharpHeight, keyDip,      lostMotion,      blow,          letOff,
                                   aftertouch, checking,    damperStart, damperRise,      halfBlow,      strap,
                                   sharpProud, downWeight,  upWeight,    playerClearance, capstanReserve};
constexpr std::array<DimensionId, 0> dNone{};
constexpr std::array dU2 = {blow, letOff, checking, damperStart};
constexpr std::array dU3 = {blow, lostMotion, damperStart};
constexpr std::array dU4 = {keyHeight, sharpHeight, keyDip, lostMotion, aftertouch};
constexpr std::array dU5 = {keyHeight, sharpHeight, keyDip};
constexpr std::array dU6 = {lostMotion, blow, damperStart};
constexpr std::array dU8 = {lostMotion, damperStart, halfBlow, strap};
constexpr std::array dU9 = {keyDip, lostMotion, aftertouch, checking, damperStart, sharpHeight};
constexpr std::array dU10 = {aftertouch, checking, playerClearance};
constexpr std::array dU11 = {aftertouch};
constexpr std::array dU12 = {aftertouch, checking};
constexpr std::array dU13 = {checking};
constexpr std::array dU15 = {damperStart};
constexpr std::array dU16 = {downWeight};

// operations
constexpr std::array<OperationId, 0> oNone{};
constexpr std::array oU1 = {operation::inspect};
constexpr std::array oU4 = {operation::backRailShim};
constexpr std::array oU8 = {operation::restRailShim, operation::railClothShim};
constexpr std::array oU9 = {operation::balanceRailShim, operation::balancePunching};
constexpr std::array oU10 = {operation::capstanTurn};
constexpr std::array oU11 = {operation::letOffTurn};
constexpr std::array oU12 = {operation::frontPunching};
constexpr std::array oU14 = {operation::checkBend};
constexpr std::array oU15 = {operation::damperWire};
constexpr std::array oU16 = {operation::spoonBend};
constexpr std::array oU17 = {operation::bridleBend, operation::halfBlowRod, operation::pedalRod};
constexpr std::array oU19 = {operation::playerScrew};

using enum Access;
constexpr std::array kUpright = {
    WorkStep{"U0", kNone, dNone, actionOut, oNone},  // safe stand, photographs, action to the bench
    WorkStep{"U1", nU0, everything, bench, oU1},     // survey, repairs that come first, straps slack
    WorkStep{"U2", nU1, dU2, actionOut, oNone},      // hammers
    WorkStep{"U3", nU1, dU3, actionOut, oNone},      // rest rail cloth, springs
    WorkStep{"U4", nU1, dU4, keysOff, oU4},          // key frame, cloths and felts
    WorkStep{"U5", nU4, dU5, keysOff, oNone},        // keys squared, spaced, eased
    WorkStep{"U6", nU6List, dU6, actionIn, oNone},   // action seated, reference notes read
    WorkStep{"U7", nU6, dNone, actionIn, oNone},     // trial notes
    WorkStep{"U8", nU7, dU8, actionIn, oU8},         // blow by the rest rail
    WorkStep{"U9", nU9, dU9, keysOff, oU9},          // key height
    WorkStep{"U10", nU10List, dU10, actionIn, oU10}, // lost motion
    WorkStep{"U11", nU10, dU11, actionIn, oU11},     // let-off
    WorkStep{"U12", nU12, dU12, oneKey, oU12},       // dip
    WorkStep{"U13", nU13, dU13, actionIn, oNone},    // aftertouch: go / no-go, which one floats
    WorkStep{"U14", nU14, dNone, actionIn, oU14},    // checking
    WorkStep{"U15", nU6, dU15, actionIn, oU15},      // dampers: pedal line
    WorkStep{"U16", nU16, dU16, actionTilted, oU16}, // dampers: spoons
    WorkStep{"U17", nU8, dNone, actionIn, oU17},     // bridle wires, half-blow, soft rod, pedals
    WorkStep{"U18", nAll, dNone, actionIn, oNone},   // play hard, look again at M O A K
    WorkStep{"U19", nU18, dNone, actionIn, oU19},    // player: stack in, clearance
};

/// A drop action as an upright, but its keys hang on lifters: nothing on the keys without unhooking them.
constexpr auto dropSteps() {
    auto steps = kUpright;
    steps[12].access = keysOff;
    return steps;
}
constexpr auto kDrop = dropSteps();

constexpr std::array<Ids, 1> nG0 = {"G0"}, nG1 = {"G1"}, nG3 = {"G3"}, nG5 = {"G5"}, nG8 = {"G8"}, nG10 = {"G10"},
                             nG12 = {"G12"};
constexpr std::array<Ids, 2> nG5List = {"G2", "G4"}, nG8List = {"G2", "G6"}, nG10List = {"G8", "G9"},
                             nG7 = {"G6", "G4"};
constexpr std::array<Ids, 3> nG9 = {"G6", "G7", "G8"};
constexpr std::array dG0 = {keyHeight, sharpHeight, keyDip, blow};
constexpr std::array dG1 = {keyHeight, sharpHeight, keyDip};
constexpr std::array dG2 = {keyDip, blow, aftertouch, checking};
constexpr std::array dG3 = {blow, letOff};
constexpr std::array dG4 = {letOff, drop};
constexpr std::array dG5 = {aftertouch, damperStart};
constexpr std::array dG6 = {aftertouch, drop};
constexpr std::array dG8 = {aftertouch, checking};
constexpr std::array dG11 = {drop};
constexpr std::array oG2 = {operation::balanceRailShim, operation::balancePunching};
constexpr std::array oG7 = {operation::dropTurn};
constexpr std::array oG12 = {operation::damperWire, operation::leverTiming};
constexpr std::array oG13 = {operation::pedalRod};

constexpr std::array kGrand = {
    WorkStep{"G0", kNone, dG0, actionOut, oNone},     // bed the key frame
    WorkStep{"G1", nG0, dG1, bench, oU1},             // repairs, keys eased
    WorkStep{"G2", nG1, dG2, keysOff, oG2},           // key height
    WorkStep{"G3", nG1, dG3, bench, oNone},           // hammers, wippens
    WorkStep{"G4", nG3, dG4, bench, oNone},           // jacks, lever height, rough springs
    WorkStep{"G5", nG5List, dG5, actionIn, oU10},     // blow by capstans
    WorkStep{"G6", nG5, dG6, actionIn, oU11},         // let-off
    WorkStep{"G7", nG7, dNone, actionIn, oG7},        // drop
    WorkStep{"G8", nG8List, dG8, oneKey, oU12},       // dip
    WorkStep{"G9", nG9, dU13, actionIn, oNone},       // aftertouch go / no-go
    WorkStep{"G10", nG10List, dNone, actionIn, oU14}, // checking
    WorkStep{"G11", nG10, dG11, bench, oNone},        // springs fine
    WorkStep{"G12", nG8, dU16, actionOut, oG12},      // dampers
    WorkStep{"G13", nG12, dNone, actionIn, oG13},     // una corda, pedals
};

} // namespace

std::span<const WorkStep> orderOfWork(ActionKind kind) {
    constexpr std::array<std::span<const WorkStep>, 3> graphs = {kUpright, kDrop, kGrand};
    return graphs.at(static_cast<std::size_t>(kind));
}

/// Of the steps whose needs are all done, always the first in the table: stable, and empty at the end only when no
/// needs run in a circle.
std::vector<std::string_view> sortedWork(ActionKind kind) {
    const auto steps = orderOfWork(kind);
    std::vector<std::string_view> sorted;
    const auto done = [&](std::string_view id) { return std::find(sorted.begin(), sorted.end(), id) != sorted.end(); };
    for (bool moved = true; moved;) {
        moved = false;
        for (const WorkStep& step : steps) {
            if (done(step.id) || !std::all_of(step.needs.begin(), step.needs.end(), done)) continue;
            sorted.push_back(step.id);
            moved = true;
            break;
        }
    }
    return sorted;
}

namespace {

using Places = std::vector<std::size_t>; // by row of the operation

Places placesIn(ActionKind kind) {
    const auto sorted = sortedWork(kind);
    Places places(operations().size(), sorted.size());
    for (const Operation& operation : operations())
        for (const WorkStep& step : orderOfWork(kind)) {
            if (std::find(step.operations.begin(), step.operations.end(), operation.id) == step.operations.end())
                continue;
            places[operation.id.row] =
                static_cast<std::size_t>(std::find(sorted.begin(), sorted.end(), step.id) - sorted.begin());
            break;
        }
    return places;
}

} // namespace

std::size_t placeInWork(OperationId id, ActionKind kind) {
    // Sorting the graph anew for every question was a quarter of a plan's time.
    static const std::array<Places, 3> places = {placesIn(ActionKind::upright), placesIn(ActionKind::drop),
                                                 placesIn(ActionKind::grand)};
    return places[static_cast<std::size_t>(kind)][id.row];
}

} // namespace hammerline
