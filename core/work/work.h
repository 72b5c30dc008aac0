// The order of work as steps a person carries out, with and without numbers: a graph for each kind of action. The
// sentences of a step stand in ui/words.
#pragma once

#include "core/operation/operation.h"
#include "core/survey/survey.h"

namespace hammerline {

/// Where in the job a step stands, in this order.
enum class WorkPart : std::uint8_t { before, opening, keys, bench, seated, regulating, player, after };
std::string_view key(WorkPart);

struct StepOfWork {
    std::string_view id; // set-rest-rail
    std::string_view kinds;
    WorkPart part{};
    std::vector<std::string_view> access, accessOfGrand; // where it is done, the first as a rule
    std::vector<std::string_view> needs;                 // earlier steps
    std::vector<std::string_view> disturbs;              // dimensions by key, or "everything"
    std::vector<std::string_view> operations;            // of the plan
    std::array<double, 2> minutes{};                     // practised and beginner; 0: takes none of its own
    PartUnit per = PartUnit::piano;
    std::vector<std::string_view> cautions;
    std::string_view drawing; // empty: nothing to draw
};

/// All of them, as written down.
std::span<const StepOfWork> allSteps();
/// Null: there is none of that id.
const StepOfWork* findStep(std::string_view id);
/// The letters of the kinds that this piano is: U upright with wooden hammer flanges, B brass flange rail, D drop
/// action, O overdamper, G grand, P with a player stack.
std::string kindLetters(const Piano&);
/// Whether this piano has the step: one of its letters fits. A brass rail's hammers are not travelled; an overdamper's
/// wires are not lined, and its spoons not bent.
bool offered(const StepOfWork&, const Piano&);
/// Of this piano, in an order in which needs come first. A need that is no step of this piano counts as done.
std::vector<const StepOfWork*> stepsOf(const Piano&);
/// The needs that this piano has.
std::vector<std::string_view> needsOf(const StepOfWork&, const Piano&);
const std::vector<std::string_view>& accessOf(const StepOfWork&, const Piano&);
/// The one that is taken for so many notes: a few keys come off one at a time.
std::string_view accessFor(const StepOfWork&, const Piano&, std::size_t notes);
/// A grand does not tip backward; an upright's lid is no grand's, and its action does not slide.
std::vector<std::string_view> cautionsOf(const StepOfWork&, const Piano&);
/// The ways to get at the work, by id: closed, front-open, ...
std::span<const std::string_view> workAccessKeys();

} // namespace hammerline
