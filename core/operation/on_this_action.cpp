// Which operations an action has, where they are reached, and which way its parts are turned (computation 7): all of it
// rows over the attributes of the action.
#include "core/operation/operation.h"

namespace hammerline {

namespace {

using Holds = bool (*)(const Piano&);

bool always(const Piano&) {
    return true;
}
bool vertical(const Piano& p) {
    return p.vertical();
}
bool grand(const Piano& p) {
    return !p.vertical();
}
bool dropAction(const Piano& p) {
    return p.action == ActionKind::drop;
}
bool hasLetOffScrew(const Piano& p) {
    return p.letOff != LetOffScrew::none;
}
bool hasSpoons(const Piano& p) {
    return p.vertical() && p.damping == Damping::underdamper;
}
bool hasGrandLevers(const Piano& p) {
    return p.damping == Damping::grandLever;
}
bool hasPlayer(const Piano& p) {
    return p.hasPlayer();
}

// By row of the catalogue. A grand's keys carry no lost motion, so its back rail is no matter of one shim.
constexpr std::array<Holds, kOperationCount> kHas = {
    always,         // balance punching
    always,         // front punching
    always,         // capstan: fixed ones are faced by the millimetre
    vertical,       // rest rail pads
    vertical,       // rest rail cloth at one note
    hasLetOffScrew, // let-off
    grand,          // drop
    always,         // back check wire
    hasSpoons,      // spoons
    always,         // damper wire
    vertical,       // bridle wire
    always,         // balance rail
    vertical,       // back rail with balance rail
    hasPlayer,      // player screw
    vertical,       // half-blow rod
    always,         // pedal rod
    hasGrandLevers, // lever timing
    always,         // inspect
};

struct Reached {
    OperationId operation;
    Holds when;
    Access access;
};
// A stack in front of the action has to come out before capstans and checks are reached.
constexpr std::array kReached = {
    Reached{operation::capstanTurn, hasPlayer, Access::stackOut},
    Reached{operation::checkBend, hasPlayer, Access::stackOut},
    // A grand's drop screws, checks and capstans are read with the action in its place and turned with it drawn out on
    // a level bench; papers under the keys want the stack off for the balance pins. A drop action's keys hang on
    // lifters.
    Reached{operation::capstanTurn, grand, Access::actionOut},
    Reached{operation::checkBend, grand, Access::actionOut},
    Reached{operation::dropTurn, grand, Access::actionOut},
    Reached{operation::balancePunching, grand, Access::keysOff},
    Reached{operation::frontPunching, grand, Access::actionOut},
    Reached{operation::balancePunching, dropAction, Access::keysOff},
    Reached{operation::frontPunching, dropAction, Access::keysOff},
};

using enum Direction;
struct DirectionWords {
    Direction positive, negative;
};
// By row of the catalogue: the word of a positive and of a negative amount.
constexpr std::array<DirectionWords, kOperationCount> kDirectionWords = {{
    {add, remove},              // balance punching
    {add, remove},              // front punching
    {anticlockwise, clockwise}, // capstan (see kCapstanWords)
    {add, remove},              // rest rail pads
    {add, remove},              // rest rail cloth
    {in, out},                  // let-off
    {in, out},                  // drop
    {toward, away},             // check wire, toward the catcher (grand: the tail)
    {toward, away},             // spoon, toward the damper lever
    {toward, away},             // damper wire, toward the string
    {away, toward},             // bridle wire, away from the butt is tighter
    {add, remove},              // balance rail
    {add, remove},              // back rail
    {farther, nearer},          // player finger
    {longer, shorter},          // half-blow rod
    {longer, shorter},          // pedal rod
    {later, earlier},           // grand damper levers
    {inspect, inspect},
}};

// Seen from above, UP first. A drop button draws its wire up clockwise; of a rocker's two screws the one that lifts is
// found by the trial; a fixed capstan is faced. Common practice, no source, except the two turning directions
// (situations 23 and 24).
constexpr std::array<DirectionWords, 6> kCapstanWords = {{
    {anticlockwise, clockwise}, // holed
    {anticlockwise, clockwise}, // square shank
    {anticlockwise, clockwise}, // dowel
    {clockwise, anticlockwise}, // rocker
    {add, remove},              // fixed
    {clockwise, anticlockwise}, // drop button
}};

constexpr std::array<std::string_view, 15> kDirectionKeys = {
    "clockwise", "anticlockwise", "add",    "remove",  "toward",  "away",  "in",     "out",
    "longer",    "shorter",       "nearer", "farther", "earlier", "later", "inspect"};

} // namespace

std::string_view key(Direction direction) {
    return kDirectionKeys.at(static_cast<std::size_t>(direction));
}

bool applies(OperationId id, const Piano& piano) {
    return kHas.at(id.row)(piano);
}

Access accessOf(OperationId id, const Piano& piano) {
    for (const Reached& reached : kReached)
        if (reached.operation == id && reached.when(piano)) return reached.access;
    return row(id).access;
}

AmountUnit unitOf(OperationId id, const Piano& piano) {
    if (id == operation::capstanTurn && piano.capstan == Capstan::fixed) return AmountUnit::mm;
    return row(id).unit;
}

double capOf(OperationId id, const Piano& piano) {
    if (id != operation::capstanTurn) return row(id).capPerGo;
    if (piano.capstan == Capstan::fixed) return 0;
    if (!piano.vertical()) return 0.125;
    return piano.capstan == Capstan::rocker ? 0.25 : row(id).capPerGo;
}

double firstTrialOf(OperationId id, const Piano& piano) {
    if (id != operation::capstanTurn) return row(id).firstTrial;
    if (piano.capstan == Capstan::fixed) return 0;
    return piano.vertical() ? row(id).firstTrial : 0.125;
}

DimensionId servesOf(OperationId id, KeyColour colour, const Piano& piano) {
    const DimensionId served = row(id).serves;
    if (served == dimension::keyHeight && colour == KeyColour::sharp) return dimension::sharpHeight;
    if (served == dimension::lostMotion && !piano.vertical()) return dimension::blow;
    return served;
}

namespace {

std::optional<double> ownMinutes(std::string_view of, const Piano& piano) {
    const auto own = piano.minutes.find(std::string(of));
    return own == piano.minutes.end() ? std::nullopt : std::optional(own->second);
}

} // namespace

double minutesFor(OperationId id, const Piano& piano) {
    return ownMinutes(key(id), piano).value_or(row(id).minutes[0]);
}

std::array<double, 2> minutesToReach(Access access, const Piano& piano) {
    if (const auto own = ownMinutes(key(access), piano)) return {*own, *own};
    // bench-practice 2.7: keys off and on, action out and in (drop action with its lifters), stack out and in.
    switch (access) {
    case Access::keysOff:
        if (piano.action == ActionKind::drop) return {40, 90}; // every lifter unhooked and hooked again
        if (!piano.vertical()) return {25, 55};                // the stack off, then the keys
        return {15, 30};
    case Access::stackOut:
        return piano.hasPlayer() ? std::array{60.0, 150.0} : std::array{0.0, 0.0};
    case Access::actionTilted:
    case Access::actionOut:
    case Access::bench:
        if (piano.action == ActionKind::drop) return {40, 90};
        if (piano.damping == Damping::overdamper) return {20, 45}; // the cage comes off first
        if (!piano.vertical()) return {5, 15};                     // drawn out on its key frame
        return {10, 25};
    case Access::oneKey:
    case Access::actionIn:
    case Access::stackIn: // put back with the way out
        return {0, 0};
    }
    return {0, 0};
}

std::optional<Turn> customaryTurn(OperationId id, const Piano& piano) {
    if (id == operation::letOffTurn || id == operation::dropTurn) return Turn::clockwise;
    if (id != operation::capstanTurn || piano.capstan == Capstan::rocker) return std::nullopt;
    switch (kCapstanWords.at(static_cast<std::size_t>(piano.capstan)).positive) {
    case clockwise:
        return Turn::clockwise;
    case anticlockwise:
        return Turn::anticlockwise;
    default:
        return std::nullopt;
    }
}

const TurnAttribute* turnAttribute(OperationId id) {
    static constexpr std::array kTurned = {TurnAttribute{operation::capstanTurn, "capstan-up", &Piano::capstanUp},
                                           TurnAttribute{operation::letOffTurn, "let-off-in", &Piano::letOffIn},
                                           TurnAttribute{operation::dropTurn, "drop-in", &Piano::dropIn}};
    for (const TurnAttribute& each : kTurned)
        if (each.operation == id) return &each;
    return nullptr;
}

std::optional<Turn> turnOf(OperationId id, const Piano& piano) {
    const TurnAttribute* attribute = turnAttribute(id);
    const bool turned = attribute && unitOf(id, piano) == AmountUnit::turn;
    return turned && piano.*attribute->said ? piano.*attribute->said : customaryTurn(id, piano);
}

Direction directionOf(OperationId id, double amount, const Piano& piano) {
    DirectionWords words = kDirectionWords.at(id.row);
    if (id == operation::capstanTurn) {
        words = kCapstanWords.at(static_cast<std::size_t>(piano.capstan));
        if (const auto up = turnOf(id, piano))
            words = *up == Turn::clockwise ? DirectionWords{clockwise, anticlockwise}
                                           : DirectionWords{anticlockwise, clockwise};
    }
    return amount < 0 ? words.negative : words.positive;
}

Direction otherWay(OperationId id, Direction direction, const Piano& piano) {
    const Direction positive = directionOf(id, 1, piano);
    return direction == positive ? directionOf(id, -1, piano) : positive;
}

} // namespace hammerline
