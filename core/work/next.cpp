#include "core/work/next.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 7> kNextKinds = {"piano", "bench", "measure-again", "look",
                                                        "step",  "wait",  "done"};

NextAct ofStep(const StepNow& now) {
    NextAct next;
    next.kind = NextKind::step;
    next.notes = now.notes;
    next.dimension = now.dimension;
    next.step = now;
    return next;
}

NextAct waiting(std::span<const StepNow> steps) {
    NextAct next;
    for (const StepNow& each : steps)
        if (each.state == StepState::waits) next.supplies.insert(each.supplies.begin(), each.supplies.end());
    next.kind = next.supplies.empty() ? NextKind::done : NextKind::wait;
    return next;
}

} // namespace

std::string_view key(NextKind kind) {
    return kNextKinds.at(static_cast<std::size_t>(kind));
}

NextAct nextAct(std::span<const StepNow> steps, const BeforeWork& before) {
    const auto open = std::find_if(steps.begin(), steps.end(), [](const StepNow& each) { return each.openNow(); });
    if (open == steps.end()) return waiting(steps);
    const bool byPlan = open->asks == StepAsks::turn || open->asks == StepAsks::trial;
    if (!byPlan) return ofStep(*open);
    NextAct next = ofStep(*open);
    if (before.bench) {
        next.kind = NextKind::bench;
    } else if (!before.doubtful.empty()) {
        next.kind = NextKind::measureAgain;
        next.notes = before.doubtful;
        next.dimension = before.suspect;
    } else if (!before.questions.empty()) {
        next.kind = NextKind::look;
        next.question = before.questions.front();
    }
    return next;
}

} // namespace hammerline
