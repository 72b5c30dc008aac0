#include "core/survey/rail_advice.h"

#include "core/survey/standing.h"

namespace hammerline {

bool letOffRailFirst(std::span<const Finding> findings, const Piano& piano) {
    const Part& screw = *findPart("let-off-screw");
    const Standing standing(findings, piano);
    const auto notes = notesOf(screw, piano);
    std::size_t held = 0;
    for (const NoteNumber n : notes)
        held += standing.state(screw, n) == FindingState::toDo;
    return held * 20 > notes.size();
}

} // namespace hammerline
