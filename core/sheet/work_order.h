// The whole job in the order in which it is done: look, order, take apart, mend, regulate, the player, the record; with
// hours, what is done and what waits for parts (bench-practice 2.7, 2.8, 3).
#pragma once

#include "core/plan/plan.h"
#include "core/survey/job.h"

namespace hammerline {

enum class WorkState : std::uint8_t { nothing, open, waits, done };
std::string_view key(WorkState);

/// One step. Its id: "look" at what is not looked at, "order" parts, "take-apart" (and number), a JobStage's key,
/// "regulate", "player" (also a JobStage: service, then the stack in and its clearance), "record".
struct WorkOrderStep {
    std::string_view id;
    WorkState state = WorkState::nothing;
    std::vector<JobLine> lines;     // repairs of this step
    std::set<std::string> waitsFor; // supplies not in hand
    int open = 0, done = 0;         // parts to look at, lines to order, findings, steps of the plan
    double minutesOpen = 0, minutesDone = 0;
};

struct WorkOrder {
    std::vector<WorkOrderStep> steps; // all of them in order, also those in which nothing is to be done
    double minutesOpen = 0, minutesDone = 0;
    double unforeseen = 0; // a tenth of the open repairs: what shows only once it is apart
    int blockedNotes = 0;
};

/// `plan`: the plan in force, null where there is none yet; its steps for a player's fingers come after all others.
WorkOrder workOrder(const PianoRecord&, const Plan*);
/// The same with the plan in force for the last pass, where a pass has readings.
WorkOrder workOrder(const PianoRecord&);

/// What the symptoms come from: the last pass with readings and the findings answer together.
std::vector<Advice> adviceOf(const PianoRecord&);

} // namespace hammerline
