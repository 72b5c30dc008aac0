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

std::vector<std::string_view> askBeforePlan(std::span<const Finding> findings, const Piano& piano) {
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
    return out;
}

} // namespace hammerline
