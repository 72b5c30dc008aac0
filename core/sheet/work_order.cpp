#include "core/sheet/work_order.h"

#include "core/plan/plan_in_force.h"
#include "core/sheet/pass_view.h"
#include "core/survey/standing.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 4> kStates = {"nothing", "open", "waits", "done"};

/// Repairs that need the action on the bench, or the keys off.
constexpr std::array kOnTheBench = {JobStage::action, JobStage::hammers, JobStage::rails, JobStage::dampers};
constexpr std::array kKeysOff = {JobStage::keyFrame, JobStage::keys};

/// A step waits only where all of its open repairs wait for parts.
void settle(WorkOrderStep& step) {
    const bool waits =
        !step.lines.empty() && std::all_of(step.lines.begin(), step.lines.end(),
                                           [](const JobLine& line) { return line.toDo.empty() || line.waits; });
    if (step.open == 0)
        step.state = step.done > 0 ? WorkState::done : WorkState::nothing;
    else
        step.state = waits ? WorkState::waits : WorkState::open;
}

/// Parts of this piano at which some place was not looked at yet; a damper felt counts once one of them stands there.
WorkOrderStep lookStep(const PianoRecord& record) {
    WorkOrderStep step;
    step.id = "look";
    const Standing standing(record.findings, record.piano);
    for (const Part& part : parts()) {
        const auto notes = notesOf(part, record.piano);
        if (notes.empty()) continue;
        const bool felt = !damperFeltSize(part).empty();
        const bool seen = std::all_of(notes.begin(), notes.end(), [&](NoteNumber n) {
            return standing.state(part, n) != FindingState::notLookedAt || (felt && standing.damperFeltAt(n));
        });
        ++(seen ? step.done : step.open);
    }
    settle(step);
    return step;
}

WorkOrderStep orderStep(const PianoRecord& record, const JobTerms& terms) {
    WorkOrderStep step;
    step.id = "order";
    for (const PartsLine& line : partsList(record.findings, record.piano, terms.spares)) {
        if (!line.with.empty()) continue; // it comes with what it belongs to
        const bool here = terms.inHand.contains(line.part);
        ++(here ? step.done : step.open);
        if (!here) step.waitsFor.insert(line.part);
    }
    settle(step);
    return step;
}

WorkOrderStep stageStep(JobStage stage, const Job& job) {
    WorkOrderStep step;
    step.id = key(stage);
    for (const JobLine& line : job.lines) {
        if (line.stage != stage) continue;
        step.open += static_cast<int>(line.toDo.size());
        step.done += static_cast<int>(line.mended.size());
        step.minutesOpen += line.minutesOpen;
        step.minutesDone += line.minutesDone;
        step.waitsFor.insert(line.waitsFor.begin(), line.waitsFor.end());
        step.lines.push_back(line);
    }
    settle(step);
    return step;
}

template <std::size_t N>
bool anyOpen(const std::array<JobStage, N>& stages, const Job& job) {
    return std::any_of(job.lines.begin(), job.lines.end(), [&](const JobLine& line) {
        return !line.toDo.empty() && std::find(stages.begin(), stages.end(), line.stage) != stages.end();
    });
}

/// Action out and in, stack out and in, keys off and on: once for all repairs. The plan counts its own visits.
WorkOrderStep takeApartStep(const Piano& piano, const Job& job, Hand hand) {
    WorkOrderStep step;
    step.id = "take-apart";
    const auto visit = [&](Access access) {
        ++step.open;
        step.minutesOpen += minutesToReach(access, piano)[static_cast<std::size_t>(hand)];
    };
    const bool bench = anyOpen(kOnTheBench, job);
    if (bench && piano.hasPlayer()) visit(Access::stackOut);
    if (bench) visit(Access::actionOut);
    if (anyOpen(kKeysOff, job)) visit(Access::keysOff);
    settle(step);
    return step;
}

/// The steps of the plan that are for the player's fingers, or all others.
void addPlan(WorkOrderStep& step, const Plan& plan, const PianoRecord& record, bool forPlayer) {
    double ofSteps = 0;
    for (const Step& each : plan.steps) {
        ofSteps += each.minutes;
        if ((each.operation == operation::playerScrew) != forPlayer) continue;
        const bool ticked =
            !plan.uuid.empty() && std::any_of(record.done.begin(), record.done.end(), [&](const Done& done) {
                return done.plan == plan.uuid && done.step == each.id;
            });
        ++(ticked ? step.done : step.open);
        (ticked ? step.minutesDone : step.minutesOpen) += each.minutes;
    }
    // Getting there belongs to the regulating, as long as any of it is open.
    if (!forPlayer && step.open > 0) step.minutesOpen += std::max(0.0, plan.minutes - ofSteps);
}

WorkOrderStep regulateStep(const Plan* plan, const PianoRecord& record) {
    WorkOrderStep step;
    step.id = "regulate";
    if (plan)
        addPlan(step, *plan, record, false);
    else
        step.open = 1; // not measured yet: how much it is will show
    settle(step);
    return step;
}

/// The owner's record is the last thing; it is due once nothing else is open.
WorkOrderStep recordStep(const std::vector<WorkOrderStep>& before) {
    WorkOrderStep step;
    step.id = "record";
    const bool all = std::all_of(before.begin(), before.end(), [](const WorkOrderStep& each) {
        return each.state == WorkState::nothing || each.state == WorkState::done;
    });
    step.open = 1;
    step.state = all ? WorkState::open : WorkState::waits;
    return step;
}

} // namespace

std::string_view key(WorkState state) {
    return kStates.at(static_cast<std::size_t>(state));
}

WorkOrder workOrder(const PianoRecord& record, const Plan* plan) {
    const JobTerms terms = jobTerms(record.preferences);
    const Job job = wholeJob(record.findings, record.piano, terms);
    WorkOrder order;
    auto& steps = order.steps;
    steps.push_back(lookStep(record));
    steps.push_back(stageStep(JobStage::beforeTilting, job));
    steps.push_back(orderStep(record, terms));
    steps.push_back(takeApartStep(record.piano, job, terms.hand));
    for (const JobStage stage : {JobStage::action, JobStage::hammers, JobStage::rails, JobStage::keyFrame,
                                 JobStage::keys, JobStage::dampers, JobStage::pedals})
        steps.push_back(stageStep(stage, job));
    steps.push_back(regulateStep(plan, record));
    if (record.piano.hasPlayer()) {
        steps.push_back(stageStep(JobStage::player, job));
        if (plan) addPlan(steps.back(), *plan, record, true);
        settle(steps.back());
    }
    steps.push_back(recordStep(steps));
    for (const WorkOrderStep& step : steps) {
        order.minutesOpen += step.minutesOpen;
        order.minutesDone += step.minutesDone;
    }
    order.unforeseen = job.unforeseen;
    order.blockedNotes = job.blockedNotes;
    return order;
}

WorkOrder workOrder(const PianoRecord& record) {
    const bool read = !record.passes.empty() && record.passes.back().readingCount() > 0;
    if (!read) return workOrder(record, nullptr);
    const auto plan = planInForce(record, sheetOf(record), record.passes.back().number, {});
    return workOrder(record, plan ? &*plan : nullptr);
}

std::vector<Advice> adviceOf(const PianoRecord& record) {
    if (record.symptoms.empty()) return {};
    for (auto pass = record.passes.rbegin(); pass != record.passes.rend(); ++pass) {
        if (pass->readingCount() == 0) continue;
        if (const auto view = viewPass(record, pass->number)) return advise({&record, &view->pass, &view->review});
    }
    return advise({&record, nullptr, nullptr});
}

} // namespace hammerline
