#include "core/work/work.h"

#include "core/work/step_rows.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 8> kWorkParts = {"before", "opening",    "keys",   "bench",
                                                        "seated", "regulating", "player", "after"};
constexpr std::array<std::string_view, 17> kWorkAccesses = {
    "closed",    "front-open", "bottom-open", "in",      "rail-off",    "tilted",     "one-key", "keys-off", "out",
    "stack-out", "stack-in",   "g-in",        "g-drawn", "g-stack-off", "g-keys-off", "g-belly", "g-under"};

std::vector<std::string_view> wordsOf(std::string_view list) {
    std::vector<std::string_view> out;
    while (!list.empty()) {
        const auto end = std::min(list.find(' '), list.size());
        if (end > 0) out.push_back(list.substr(0, end));
        list.remove_prefix(std::min(end + 1, list.size()));
    }
    return out;
}

std::vector<StepOfWork> parsed() {
    std::vector<StepOfWork> out;
    for (const work::StepRow& row : work::rows())
        out.push_back({.id = row.id,
                       .kinds = row.kinds,
                       .part = row.part,
                       .access = wordsOf(row.access),
                       .accessOfGrand = wordsOf(row.accessOfGrand),
                       .needs = wordsOf(row.needs),
                       .disturbs = wordsOf(row.disturbs),
                       .operations = wordsOf(row.operations),
                       .minutes = row.minutes,
                       .per = row.per,
                       .cautions = wordsOf(row.cautions),
                       .drawing = row.drawing});
    return out;
}

} // namespace

std::string kindLetters(const Piano& piano) {
    if (!piano.vertical()) return "G";
    const bool brass = piano.butt == Butt::brassRail;
    std::string letters = piano.action == ActionKind::drop ? "D" : brass ? "" : "U";
    if (brass) letters += 'B';
    if (piano.damping == Damping::overdamper) letters += 'O';
    if (piano.hasPlayer()) letters += 'P';
    return letters;
}

std::string_view key(WorkPart part) {
    return kWorkParts.at(static_cast<std::size_t>(part));
}

std::span<const std::string_view> workAccessKeys() {
    return kWorkAccesses;
}

std::span<const StepOfWork> allSteps() {
    static const std::vector<StepOfWork> all = parsed();
    return all;
}

const StepOfWork* findStep(std::string_view id) {
    for (const StepOfWork& step : allSteps())
        if (step.id == id) return &step;
    return nullptr;
}

bool offered(const StepOfWork& step, const Piano& piano) {
    const bool travelled = step.id == "travel-hammers";
    const bool underdamped = step.id == "line-dampers" || step.id == "time-dampers-by-key";
    const bool letOff = step.id == "try-let-off-screws" || step.id == "set-let-off";
    if (travelled && piano.vertical() && piano.butt == Butt::brassRail) return false;
    if (underdamped && piano.damping == Damping::overdamper) return false;
    if (letOff && piano.letOff == LetOffScrew::none) return false;
    return step.kinds.find_first_of(kindLetters(piano)) != std::string_view::npos;
}

std::vector<std::string_view> needsOf(const StepOfWork& step, const Piano& piano) {
    std::vector<std::string_view> out;
    for (const std::string_view need : step.needs) {
        const StepOfWork* found = findStep(need);
        if (found && offered(*found, piano)) out.push_back(need);
    }
    return out;
}

const std::vector<std::string_view>& accessOf(const StepOfWork& step, const Piano& piano) {
    return piano.vertical() ? step.access : step.accessOfGrand;
}

std::vector<std::string_view> cautionsOf(const StepOfWork& step, const Piano& piano) {
    std::vector<std::string_view> out;
    for (const std::string_view each : step.cautions) {
        const bool ofGrand = each == "lid-hinge" || each == "grand-slide" || each == "action-heavy";
        const bool ofVertical = each == "tipping" || each == "action-out" || each == "straps-rotten";
        if (piano.vertical() ? !ofGrand : !ofVertical) out.push_back(each);
    }
    return out;
}

std::string_view accessFor(const StepOfWork& step, const Piano& piano, std::size_t notes) {
    const auto& list = accessOf(step, piano);
    if (list.empty()) return {};
    const bool few = notes > 0 && notes * 4 <= static_cast<std::size_t>(piano.notes);
    const bool hooked = piano.action == ActionKind::drop; // each key hangs on its lifter: none comes off alone
    const bool oneByOne = std::find(list.begin(), list.end(), "one-key") != list.end();
    if (hooked && oneByOne) return "keys-off";
    return few && oneByOne ? "one-key" : list.front();
}

/// Of the steps whose needs are all there, always the first as written: stable, and short only where needs run in a
/// circle.
std::vector<const StepOfWork*> stepsOf(const Piano& piano) {
    std::vector<const StepOfWork*> sorted;
    const auto there = [&](std::string_view id) {
        return std::any_of(sorted.begin(), sorted.end(), [&](const StepOfWork* s) { return s->id == id; });
    };
    for (bool moved = true; moved;) {
        moved = false;
        for (const StepOfWork& step : allSteps()) {
            if (!offered(step, piano) || there(step.id)) continue;
            const auto needs = needsOf(step, piano);
            if (!std::all_of(needs.begin(), needs.end(), there)) continue;
            sorted.push_back(&step);
            moved = true;
            break;
        }
    }
    return sorted;
}

} // namespace hammerline
