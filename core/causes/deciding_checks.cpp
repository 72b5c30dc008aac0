// Deciding checks: answered as findings of the survey ("1-88 action-bolts sound"), or as looks at a pass
// ("mark-capstan yes"), and what the answers make of a cause (computation 14, commands.md).
#include "core/causes/rule.h"

#include <algorithm>

namespace hammerline {
namespace {

/// Told to do, not asked: it stays beside the cause until the cause is gone.
constexpr std::array<std::string_view, 2> kInstructions = {"dip-first", "symptom-checks"};

/// A part that this action does not have is not asked about: it can be neither sound nor faulty.
bool canBeLookedAt(const DecidingCheck& check, const Piano& piano) {
    const Part* part = findPart(check.part);
    return !part || fitted(*part, piano);
}

const DecidingCheck* findCheck(std::string_view id) {
    for (const CauseRule& rule : causeRules())
        for (const DecidingCheck& check : rule.checks)
            if (check.id == id) return &check;
    return nullptr;
}

std::string preferenceOf(std::string_view check, const Pass& pass) {
    return "look." + pass.uuid + '.' + std::string(check);
}

std::optional<bool> faulty(std::string_view part, std::span<const Finding> findings) {
    std::optional<bool> answer;
    for (const Finding& finding : findings) {
        if (finding.part != part) continue;
        switch (finding.state) {
        case FindingState::toDo:
        case FindingState::watch:
            return true;
        case FindingState::sound:
        case FindingState::mended:
            answer = false;
            break;
        case FindingState::notLookedAt:
            break;
        }
    }
    return answer;
}

} // namespace

std::optional<CheckQuestion> checkQuestion(std::string_view id) {
    const DecidingCheck* check = findCheck(id);
    if (!check) return {};
    const bool told = std::find(kInstructions.begin(), kInstructions.end(), id) != kInstructions.end();
    return CheckQuestion{check->part, check->part.empty() && !told};
}

std::optional<bool> answerTo(std::string_view id, const PianoRecord& record, const Pass& pass) {
    const DecidingCheck* check = findCheck(id);
    if (!check) return {};
    if (!check->part.empty()) return faulty(check->part, record.findings);
    const auto look = record.preferences.find(preferenceOf(id, pass));
    if (look == record.preferences.end() || (look->second != "yes" && look->second != "no")) return {};
    return look->second == "yes";
}

Outcome<std::pair<std::string, std::string>> parseLook(std::string_view text, const Pass& pass) {
    const auto gap = text.find_last_of(' ');
    const std::string_view id = text.substr(0, gap);
    const std::string_view said = gap == std::string_view::npos ? std::string_view{} : text.substr(gap + 1);
    const auto question = checkQuestion(id);
    if (!question || !question->yesOrNo) {
        std::string known;
        for (const CauseRule& rule : causeRules())
            for (const DecidingCheck& check : rule.checks)
                if (checkQuestion(check.id)->yesOrNo) known += (known.empty() ? "" : ", ") + std::string(check.id);
        return refuse(RefusalCode::unknownLook, std::string(id), known);
    }
    if (said != "yes" && said != "no")
        return refuse(RefusalCode::unknownLook, std::string(text),
                      std::string(id) + " yes, " + std::string(id) + " no");
    return std::pair{preferenceOf(id, pass), std::string(said)};
}

std::optional<Weighed> weigh(double certainty, std::span<const DecidingCheck> checks, const PianoRecord& record,
                             const Pass& pass) {
    Weighed weighed{certainty, {}};
    int spokeFor = 0, ruledOut = 0, speaking = 0, faultsElsewhere = 0, soundElsewhere = 0;
    for (const DecidingCheck& check : checks) {
        if (!canBeLookedAt(check, record.piano)) continue;
        const bool look = check.part.empty();
        const auto answer = answerTo(check.id, record, pass);
        if (!answer) {
            weighed.open.push_back(check.id);
            if (!look && check.speaksFor) ++speaking;
        } else if (look || check.speaksFor) {
            ++speaking;
            ++(*answer == check.speaksFor ? spokeFor : ruledOut);
        } else {
            ++(*answer ? faultsElsewhere : soundElsewhere);
        }
    }
    if (speaking > 0 && ruledOut == speaking) return {}; // everything that could be it is not
    if (spokeFor > 0) weighed.certainty = std::max(weighed.certainty, 0.95);
    if (soundElsewhere > 0) weighed.certainty += (1 - weighed.certainty) / 2;
    if (faultsElsewhere > 0) weighed.certainty = std::min(weighed.certainty, 0.2); // mend that first, then read again
    return weighed;
}

} // namespace hammerline
