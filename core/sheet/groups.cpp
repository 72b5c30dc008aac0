// The steps of a plan as they are done: under the access they need, operation by operation, from the bass end.
#include "core/sheet/sheet.h"

#include <algorithm>

namespace hammerline {

namespace {

int firstNote(const Step& step) {
    if (step.note) return step.note->value;
    return step.notes.empty() ? 0 : step.notes.front().value;
}

bool isLearned(const Plan& plan, OperationId operation) {
    return std::ranges::any_of(plan.responses,
                               [&](const Response& r) { return r.operation == operation && r.learned; });
}

/// Straight after each other in the order of work under the same access: one visit.
AccessGroup& visit(std::vector<AccessGroup>& groups, Access access, const Piano& piano) {
    if (groups.empty() || groups.back().access != access)
        groups.push_back({access, minutesToReach(access, piano).front(), {}});
    return groups.back();
}

OperationGroup& work(AccessGroup& group, const Plan& plan, OperationId operation) {
    if (group.operations.empty() || group.operations.back().operation != operation)
        group.operations.push_back({operation, {}, 0, isLearned(plan, operation)});
    return group.operations.back();
}

} // namespace

std::vector<AccessGroup> groupSteps(const Plan& plan, const Piano& piano) {
    std::vector<const Step*> steps;
    for (const Step& step : plan.steps)
        steps.push_back(&step);
    std::ranges::stable_sort(steps, {}, [](const Step* step) { return step->order; });

    std::vector<AccessGroup> groups;
    for (const Step* step : steps) {
        OperationGroup& group = work(visit(groups, step->access, piano), plan, step->operation);
        group.steps.push_back(step);
        group.minutes += step->minutes;
    }
    for (AccessGroup& access : groups)
        for (OperationGroup& group : access.operations)
            std::ranges::stable_sort(group.steps, {}, [](const Step* step) { return firstNote(*step); });
    return groups;
}

} // namespace hammerline
