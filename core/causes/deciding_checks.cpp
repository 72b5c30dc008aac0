// Deciding checks answered as findings of the survey: "1-88 action-bolts sound" (computation 14, commands.md).
#include "core/causes/rule.h"

#include <algorithm>

namespace hammerline {
namespace {

enum class Answer : std::uint8_t { open, sound, faulty };

Answer answerTo(const DecidingCheck& check, std::span<const Finding> findings) {
    Answer answer = Answer::open;
    if (check.part.empty()) return answer;
    for (const Finding& finding : findings) {
        if (finding.part != check.part) continue;
        switch (finding.state) {
        case FindingState::toDo:
        case FindingState::watch:
            return Answer::faulty;
        case FindingState::sound:
        case FindingState::mended:
            answer = Answer::sound;
            break;
        case FindingState::notLookedAt:
            break;
        }
    }
    return answer;
}

} // namespace

std::optional<Weighed> weigh(double certainty, std::span<const DecidingCheck> checks,
                             std::span<const Finding> findings) {
    Weighed weighed{certainty, {}};
    int faultsFor = 0, soundFor = 0, speaking = 0, faultsAgainst = 0, soundAgainst = 0;
    for (const DecidingCheck& check : checks) {
        if (check.faultSpeaksFor && !check.part.empty()) ++speaking;
        switch (answerTo(check, findings)) {
        case Answer::open:
            weighed.open.push_back(check.id);
            break;
        case Answer::sound:
            ++(check.faultSpeaksFor ? soundFor : soundAgainst);
            break;
        case Answer::faulty:
            ++(check.faultSpeaksFor ? faultsFor : faultsAgainst);
            break;
        }
    }
    if (faultsFor == 0 && speaking > 0 && soundFor == speaking) return {}; // every part that could be it is sound
    if (faultsFor > 0) weighed.certainty = std::max(weighed.certainty, 0.95);
    if (soundAgainst > 0) weighed.certainty += (1 - weighed.certainty) / 2;
    if (faultsAgainst > 0) weighed.certainty = std::min(weighed.certainty, 0.2); // mend that first, then read again
    return weighed;
}

} // namespace hammerline
