#include "core/plan/plan_in_force.h"

#include "core/survey/job.h"

#include <algorithm>

namespace hammerline {

namespace {

/// The sense of a step that says none: by the word that was customary when it was written.
bool positiveByWord(const Step& step, Piano piano) {
    piano.capstanUp = piano.letOffIn = piano.dropIn = std::nullopt;
    return directionOf(step.operation, 1, piano) == step.direction;
}

} // namespace

Outcome<Plan> thaw(const FrozenPlan& frozen, const Piano& piano) {
    auto plan = readPlan(frozen.content);
    if (!plan) return plan;
    plan->uuid = frozen.uuid;
    for (Step& step : plan->steps) {
        if (step.direction == Direction::inspect) continue;
        if (!step.positive) step.positive = positiveByWord(step, piano);
        step.direction = directionOf(step.operation, *step.positive ? 1 : -1, piano);
        for (Trial& trial : plan->trials)
            if (trial.operation == step.operation && !trial.notes.empty() && step.note == trial.notes.front())
                trial.direction = step.direction;
    }
    return plan;
}

Outcome<Plan> planInForce(const PianoRecord& record, const SpecSheet& sheet, int pass,
                          const std::optional<PlanOptions>& options) {
    if (options) return makePlan(record, sheet, pass, *options);
    const FrozenPlan* newest = nullptr;
    for (const FrozenPlan& each : record.plans)
        if (each.pass == pass && (!newest || each.order > newest->order)) newest = &each;
    if (!newest) return makePlan(record, sheet, pass, PlanOptions{});
    auto plan = thaw(*newest, record.piano);
    if (plan) plan->setUp = benchSetUp(record, pass);
    return plan;
}

FrozenPlan freeze(const Plan& plan, std::string uuid) {
    FrozenPlan frozen;
    frozen.uuid = plan.uuid.empty() ? std::move(uuid) : plan.uuid;
    frozen.pass = plan.pass;
    frozen.options = writeOptions(plan.options);
    frozen.content = writePlan(plan);
    return frozen;
}

namespace {

Done doneOf(const Plan& plan, const Step& step) {
    Done done;
    done.operation = step.operation;
    done.notes = step.notes;
    if (done.notes.empty() && step.note) done.notes = {*step.note};
    done.plan = plan.uuid;
    done.step = step.id;
    done.pass = plan.pass;
    return done;
}

} // namespace

Outcome<Done> doneBy(const Plan& plan, const Tick& tick) {
    const auto found =
        std::find_if(plan.steps.begin(), plan.steps.end(), [&](const Step& s) { return s.id == tick.step; });
    if (found == plan.steps.end()) return refuse(RefusalCode::noSuchStep, tick.step);
    Done done = doneOf(plan, *found);
    if (tick.toAim) {
        done.toAim = true;
        done.aim = found->aim;
    } else if (tick.amount) {
        done.amount = tick.amount;
    } else {
        // No number was printed (nothing learned): the hand set it to the aim.
        done.amount = found->amount;
        done.amounts = found->amounts;
        done.toAim = !found->amount && found->amounts.empty();
        if (done.toAim) done.aim = found->aim;
    }
    return done;
}

std::vector<Done> allDone(const Plan& plan) {
    std::vector<Done> all;
    for (const Step& step : plan.steps)
        if (auto done = doneBy(plan, Tick{step.id, {}, false})) all.push_back(std::move(*done));
    return all;
}

std::vector<std::string_view> openQuestions(const Plan& plan, const PianoRecord& record) {
    auto open = askBeforePlan(record.findings, record.piano, record.marks);
    const Pass* pass = record.pass(plan.pass);
    for (const std::string_view each : plan.askFirst) {
        const bool ofSurvey = each == "try-let-off-screws" || findPart(each);
        const bool look = pass && answerTo(each, record, *pass).has_value();
        const bool already = std::find(open.begin(), open.end(), each) != open.end();
        // A part that a cause's check asks for is answered by any word on it.
        const bool byWork = answeredByWork(each, record.marks);
        const bool answered =
            ofSurvey && std::any_of(record.findings.begin(), record.findings.end(), [&](const Finding& f) {
                return f.part == each && f.state != FindingState::notLookedAt;
            });
        if (!already && !answered && !byWork && !look && each != "try-let-off-screws") open.push_back(each);
    }
    // What only tells what to do stands back behind what can be answered.
    std::stable_partition(open.begin(), open.end(), [](std::string_view id) {
        const auto check = checkQuestion(id);
        return !check || check->yesOrNo || !check->part.empty();
    });
    return open;
}

} // namespace hammerline
