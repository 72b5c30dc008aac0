// The questions that come before a plan: an unanswered one is unknown, and unknown is never sound.
#include "core/survey/job.h"
#include "core/survey/standing.h"

#include <algorithm>

namespace hammerline {
namespace {

/// Parts whose state decides whether readings mean anything at all: seats, rails, guards (the thread left under the
/// capstans, the room under the key slip) and stops, the cloth that turns to putty (bench-practice rules before the
/// tables; situation C8), straps that hold the wippens up (situation C6), the case before it is tilted.
constexpr std::array<std::string_view, 12> kAsked = {
    "case",     "action-bolts", "bridle-wire", "flange-screws", "let-off-rail",    "rest-rail-cloth", "back-rail-cloth",
    "key-slip", "capstan",      "trapwork",    "player-stack",  "player-stop-rail"};
constexpr int kTriesPerSection = 3;

/// A question and the step of the work that answers it: what was tightened, renewed or tried just now is not asked
/// about. The thread of the capstans, straps and stops have no such step before the plan.
struct AnsweringStep {
    std::string_view question, step;
};
constexpr std::array<AnsweringStep, 15> kAnswering = {{{"case", "stand-it-safe"},
                                                       {"key-frame", "bed-key-frame"},
                                                       {"try-let-off-screws", "try-let-off-screws"},
                                                       {"action-bolts", "seat-action"},
                                                       {"trapwork", "seat-action"},
                                                       {"flange-screws", "tighten-screws"},
                                                       {"let-off-rail", "tighten-screws"},
                                                       {"rest-rail-cloth", "renew-rest-rail"},
                                                       {"back-rail-cloth", "renew-key-cloths"},
                                                       {"key-slip", "space-keys"},
                                                       {"trapwork", "grand-pedals"},
                                                       {"damper-wire", "line-dampers"},
                                                       {"damper-wire", "seat-and-line-grand-dampers"},
                                                       {"player-stack", "take-stack-out"},
                                                       {"player-stop-rail", "set-player-stops"}}};

bool lookedAt(const Part& part, const Standing& standing) {
    const auto notes = notesOf(part, standing.piano());
    return std::any_of(notes.begin(), notes.end(),
                       [&](NoteNumber n) { return standing.state(part, n) != FindingState::notLookedAt; });
}

/// Three let-off screws of every section were tried (fewer where a section has fewer notes).
bool screwsTried(const Part& screw, const Standing& standing) {
    const auto sections = sectionsOf(standing.piano());
    return std::all_of(sections.begin(), sections.end(), [&](const Section& s) {
        int tried = 0;
        for (int i = s.range.first; i <= s.range.last; ++i)
            tried += standing.state(screw, NoteNumber{i}) != FindingState::notLookedAt;
        return tried >= std::min(kTriesPerSection, s.range.last - s.range.first + 1);
    });
}

} // namespace

bool answeredByWork(std::string_view question, std::span<const WorkMark> marks) {
    return std::any_of(kAnswering.begin(), kAnswering.end(), [&](const AnsweringStep& each) {
        return each.question == question && std::any_of(marks.begin(), marks.end(), [&](const WorkMark& mark) {
                   return mark.step == each.step && !mark.note && mark.state == MarkState::done;
               });
    });
}

std::vector<std::string_view> askBeforePlan(std::span<const Finding> findings, const Piano& piano,
                                            std::span<const WorkMark> marks) {
    const Standing standing(findings, piano);
    std::vector<std::string_view> out;
    const Part* screw = findPart("let-off-screw");
    if (screw && fitted(*screw, piano) && !screwsTried(*screw, standing)) out.push_back("try-let-off-screws");
    const Part* bed = findPart("key-frame"); // of a grand first of all: everything is read over it
    if (!piano.vertical() && bed && !lookedAt(*bed, standing)) out.insert(out.begin(), bed->key);
    for (const auto key : kAsked) {
        const Part* part = findPart(key);
        if (part && fitted(*part, piano) && !lookedAt(*part, standing)) out.push_back(key);
    }
    std::erase_if(out, [&](std::string_view id) { return answeredByWork(id, marks); });
    return out;
}

} // namespace hammerline
