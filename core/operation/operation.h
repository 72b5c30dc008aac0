// The catalogue of things a person does to an action, what each does to the readings, and the key lever
// (computation 5, 7; bench-practice 2.5, 2.7, 2.8).
#pragma once

#include "core/piano/dimension.h"
#include "core/piano/operation_id.h"

namespace hammerline {

enum class AmountUnit : std::uint8_t { mm, turn, none };

/// The direction words of commands.md.
enum class Direction : std::uint8_t {
    clockwise,
    anticlockwise,
    add,
    remove,
    toward,
    away,
    in,
    out,
    longer,
    shorter,
    nearer,
    farther,
    earlier,
    later,
    inspect
};
std::string_view key(Direction);

struct Operation {
    OperationId id;
    AmountUnit unit;
    bool common; // one move for many notes
    Access access;
    std::array<double, 2> minutes; // practised, beginner; per note, or per piano when common
    double firstTrial;             // turns (or mm); 0: none
    double capPerGo;               // turns or mm; 0: none
    std::string_view guard;        // id of the "stop if" sentence
    std::span<const DimensionId> disturbs;
    std::string_view step; // id in an upright's order of work (U8, ...), see orderOfWork; empty: a grand's only
    DimensionId serves;    // what it is done for; a grand's capstans serve the blow (see servesOf)
};

std::span<const Operation> operations();
const Operation& row(OperationId);
/// Whether this action has the operation at all.
bool applies(OperationId, const Piano&);
/// Its access on this piano (capstans with a stack in the way: stackOut, ...).
Access accessOf(OperationId, const Piano&);

/// Its unit on this piano (fixed capstans are faced in mm), cap per go and first trial (0: none; bench-practice 2.5).
AmountUnit unitOf(OperationId, const Piano&);
double capOf(OperationId, const Piano&);
double firstTrialOf(OperationId, const Piano&);
/// The dimension it is done for at a note of that colour: sharp-height for sharps, blow for a grand's capstans.
DimensionId servesOf(OperationId, KeyColour, const Piano&);
/// Whether a reading of the dimension is stale after the operation (bench-practice 2.8).
bool disturbs(OperationId, DimensionId, const Piano&);
/// The same for work at a note: its own readings, and a sharp's height, which is read over the naturals beside it.
bool disturbs(OperationId, NoteNumber at, Cell, const Piano&);
/// Minutes of an operation: what this piano's set-up says, else those of practised hands.
double minutesFor(OperationId, const Piano&);
/// Minutes of getting there and back once, practised and beginner (bench-practice 2.7), or what the set-up says.
std::array<double, 2> minutesToReach(Access, const Piano&);

/// Signed change of a dimension per unit of amount (mm per mm, mm per turn), with a band of one standard deviation.
/// Positive amounts are the sense of the row: punching or shim added, capstan up, let-off and drop screw in, wire
/// toward.
struct Effect {
    DimensionId dimension;
    double perUnit{};
    double sd{};
};

/// That a first guess is what other pianos taught, and of how many; `customary`: what it would be without them.
struct GuessOfOthers {
    int pianos = 0;
    double low95{}, high95{}; // of the first effect
    Effect customary;
};

struct Response {
    OperationId operation;
    std::optional<KeyColour> keys; // where naturals and sharps differ
    std::vector<Effect> effects;   // the first is what the operation is for
    bool learned = false;
    bool opposite = false; // learned, and with the other sign than the first guess
    int pairs = 0;
    double low95 = 0, high95 = 0;             // of the first effect, when learned
    std::optional<std::size_t> section = {};  // learned for this section alone, which answers otherwise than the others
    std::optional<GuessOfOthers> others = {}; // the guess is theirs
};

/// First guesses from geometry and bench-practice 2.5, or what other pianos taught (Piano::taught), for every operation
/// that applies; never a ground to print turns.
/// `ratio` = hammer travel : key travel by colour.
std::vector<Response> firstResponses(const Piano&, std::array<double, 2> ratio);

/// The direction word of a signed amount of an operation on this action. Capstans: the turn, by kind of capstan. A
/// learned response of opposite sign turns the amount's sign and with it the word.
Direction directionOf(OperationId, double amount, const Piano&);
/// The turn of a positive amount (capstan up, let-off and drop screw in): what the set-up says, else what is customary
/// on this kind of action. None where nothing is turned, or where a rocker's trial has to tell.
std::optional<Turn> turnOf(OperationId, const Piano&);
/// The same, whatever the set-up says.
std::optional<Turn> customaryTurn(OperationId, const Piano&);
/// The attribute of the set-up that says it, and where the piano keeps it; null where nothing is turned.
struct TurnAttribute {
    OperationId operation;
    std::string_view name;
    std::optional<Turn> Piano::*said;
};
const TurnAttribute* turnAttribute(OperationId);
/// The other direction of the operation on this action.
Direction otherWay(OperationId, Direction, const Piano&);

// --- key lever (computation 5). All mm per mm.
struct KeyLever {
    double heightPerBalance;  // (F+T)/T
    double dipPerBalance;     // F (1/T + 1/P)
    double capstanPerBalance; // (T-C)/T
    double lostPerBalance;    // F (1/C - 1/T), negative sense: M falls by this
    double afterPerBalance;   // F (1/P + 1/C)
    double dipPerFront;       // F/P: D falls by this
    double heightPerBack;     // F/T: H, D, M fall by this
    double capstanPerBack;    // C/T
    double lostPerCapstan;    // F/C: M falls, A grows
};
KeyLever keyLever(const KeyArms&);

/// Back-rail and balance-rail shims together that take up a lost motion at the key front with the front height kept:
/// (back, balance) in mm for `lostMotion` mm.
std::pair<double, double> frameShims(const KeyArms&, double lostMotion);

// --- order of work as a graph in data (bench-practice 2.8)
struct WorkStep {
    std::string_view id; // "U8"
    std::span<const std::string_view> needs;
    std::span<const DimensionId> disturbs;
    Access access;
    std::span<const OperationId> operations;
};
std::span<const WorkStep> orderOfWork(ActionKind);
/// The steps in an order in which needs come first (topological; stable).
std::vector<std::string_view> sortedWork(ActionKind);
/// The step of an operation in the order of work of this action, as a place in sortedWork.
std::size_t placeInWork(OperationId, ActionKind);

} // namespace hammerline
