#include "core/work/repairs.h"

#include "core/survey/standing.h"

#include <algorithm>

namespace hammerline::work {
namespace {

/// Every place of the part was looked at; of the kinds of damper felt one stands at a note.
bool lookedAtAll(const Part& part, const Standing& standing) {
    const bool felt = !damperFeltSize(part).empty();
    const auto notes = notesOf(part, standing.piano());
    return std::all_of(notes.begin(), notes.end(), [&](NoteNumber n) {
        return standing.state(part, n) != FindingState::notLookedAt || (felt && standing.damperFeltAt(n));
    });
}

void addToDo(RepairsOfStep& to, const Part& part, NoteNumber note, const Finding& finding, const WorkFacts& facts) {
    const Remedy* remedy = remedyOf(finding);
    if (!finding.note || part.unit == PartUnit::piano) to.wholePiano = true;
    if (to.toDo.empty() || to.toDo.back() != note) to.toDo.push_back(note);
    if (to.parts.empty() || to.parts.back() != part.key) to.parts.push_back(part.key);
    to.order = std::max(to.order, finding.order);
    const bool missing = remedy && !remedy->supply.empty() && !facts.terms.inHand.contains(std::string(remedy->supply));
    if (missing) to.missing.emplace(remedy->supply);
    to.allMissing = to.allMissing && missing;
}

void settle(std::vector<NoteNumber>& notes) {
    std::sort(notes.begin(), notes.end());
    notes.erase(std::unique(notes.begin(), notes.end()), notes.end());
}

/// The minutes of a part go to its steps by how many of its notes each has.
void shareMinutes(std::map<std::string_view, RepairsOfStep>& steps, const Job& job,
                  const std::map<std::pair<std::string_view, std::string_view>, int>& notes) {
    for (const JobLine& line : job.lines)
        for (const auto& [name, count] : notes)
            if (name.second == line.part && !line.toDo.empty())
                steps[name.first].minutes += line.minutesOpen * count / static_cast<double>(line.toDo.size());
}

} // namespace

std::map<std::string_view, RepairsOfStep> repairsByStep(const WorkFacts& facts) {
    std::map<std::string_view, RepairsOfStep> steps;
    std::map<std::pair<std::string_view, std::string_view>, int> notesOfPart; // step, part
    const Standing standing(facts.findings, facts.piano);
    for (const Part& part : parts()) {
        const auto notes = notesOf(part, facts.piano);
        if (notes.empty()) continue;
        Finding plain;
        plain.part = part.key;
        if (const StepOfWork* home = stepOf(plain, facts.piano); home && !lookedAtAll(part, standing))
            steps[home->id].looked = false;
        else if (home)
            steps.try_emplace(home->id);
        for (const NoteNumber n : notes) {
            const Finding* found = standing.at(part, n);
            const bool toDo = found && found->state == FindingState::toDo;
            const bool mended = found && found->state == FindingState::mended;
            const StepOfWork* step = toDo || mended ? stepOf(*found, facts.piano) : nullptr;
            if (!step) continue;
            RepairsOfStep& to = steps[step->id];
            if (mended) to.mended.push_back(n);
            const Remedy* remedy = remedyOf(*found);
            if (!toDo || (remedy && remedy->key == "leave")) continue;
            addToDo(to, part, n, *found, facts);
            to.blocking = to.blocking || standing.blocks(*found);
            ++notesOfPart[{step->id, part.key}];
        }
    }
    for (auto& [id, each] : steps) {
        settle(each.toDo);
        settle(each.mended);
    }
    shareMinutes(steps, wholeJob(facts.findings, facts.piano, facts.terms), notesOfPart);
    return steps;
}

double shareLookedAt(const WorkFacts& facts) {
    const Standing standing(facts.findings, facts.piano);
    int all = 0, looked = 0;
    for (const Part& part : parts()) {
        if (notesOf(part, facts.piano).empty()) continue;
        ++all;
        looked += lookedAtAll(part, standing);
    }
    return all == 0 ? 1 : static_cast<double>(looked) / all;
}

} // namespace hammerline::work
