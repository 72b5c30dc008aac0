#include "core/work/next.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 8> kNextKinds = {"piano", "bench", "measure-again", "look",
                                                        "step",  "wait",  "done",          "decide"};

NextAct ofStep(const StepNow& now) {
    NextAct next;
    next.kind = NextKind::step;
    next.notes = now.notes;
    next.dimension = now.dimension;
    next.step = now;
    return next;
}

/// Readings that one cause may explain are no work yet, and not done either: its check decides, or a second reading.
NextAct decide(const BeforeWork& before) {
    NextAct next;
    next.notes = before.heldBack;
    next.dimension = before.heldBackIn;
    next.kind = before.questions.empty() ? NextKind::decide : NextKind::look;
    if (!before.questions.empty()) next.question = before.questions.front();
    return next;
}

/// What is out here may have one cause: nothing of it is turned, and the step not ticked off, before that is decided.
bool heldBackHere(const StepNow& open, const BeforeWork& before) {
    const StepEvidence* evidence = evidenceOf(open.step->id);
    if (open.asks != StepAsks::tick || before.heldBack.empty() || !evidence || !before.heldBackIn) return false;
    const auto& its = evidence->dimensions;
    return std::find(its.begin(), its.end(), *before.heldBackIn) != its.end();
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
    if (open == steps.end() && !before.heldBack.empty()) return decide(before);
    if (open == steps.end()) return waiting(steps);
    if (heldBackHere(*open, before)) return decide(before);
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
