#include "core/sheet/work_said.h"

#include "core/plan/plan_in_force.h"
#include "core/work/evidence.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

bool among(std::optional<NoteNumber> note, const std::vector<NoteNumber>& notes) {
    return notes.empty() || (note && std::find(notes.begin(), notes.end(), *note) != notes.end());
}

void mendFindings(WorkDone& out, const StepSaid& said, const PianoRecord& record) {
    for (const Finding& finding : record.findings) {
        if (finding.state != FindingState::toDo || !among(finding.note, said.notes)) continue;
        const StepOfWork* step = stepOf(finding, record.piano);
        if (!step || step->id != said.step) continue;
        const Remedy* remedy = remedyOf(finding);
        if (remedy && remedy->key == "refer") continue; // somebody else's work: the step does not do it
        Finding mended = finding;
        mended.state = FindingState::mended;
        out.mended.push_back(std::move(mended));
    }
}

bool ticked(const PianoRecord& record, const Plan& plan, const Step& line) {
    return std::any_of(record.done.begin(), record.done.end(), [&](const Done& done) {
        return !plan.uuid.empty() && done.plan == plan.uuid && done.step == line.id;
    });
}

void tickLines(WorkDone& out, const StepSaid& said, const PianoRecord& record, Plan plan, const std::string& uuid) {
    const bool frozen = !plan.uuid.empty();
    if (!frozen) plan.uuid = uuid;
    for (const Step& line : plan.steps) {
        const StepOfWork* step = stepOf(line.operation, line.note, record.piano);
        if (!step || step->id != said.step || !among(line.note, said.notes) || ticked(record, plan, line)) continue;
        if (auto done = doneBy(plan, Tick{line.id, std::nullopt, true})) out.done.push_back(std::move(*done));
    }
    if (!frozen && !out.done.empty()) out.plan = freeze(plan, uuid);
}

std::vector<WorkMark> marksOf(const StepSaid& said) {
    WorkMark mark{.step = said.step,
                  .note = {},
                  .state = said.what == StepSaid::What::notHere ? MarkState::notHere : MarkState::done,
                  .remark = said.remark};
    const auto seconds = static_cast<std::int64_t>(std::llround(said.minutes * 60));
    std::vector<WorkMark> out;
    if (said.notes.empty()) {
        mark.seconds = seconds;
        out.push_back(mark);
    }
    // The time is shared evenly; what does not go up goes to the first.
    const auto count = static_cast<std::int64_t>(said.notes.size());
    for (const NoteNumber n : said.notes) {
        mark.note = n;
        mark.seconds = seconds / count + (out.empty() ? seconds % count : 0);
        out.push_back(mark);
    }
    return out;
}

void takeBack(WorkDone& out, const StepSaid& said, const PianoRecord& record) {
    const auto whole = std::find_if(record.marks.begin(), record.marks.end(),
                                    [&](const WorkMark& mark) { return mark.step == said.step && !mark.note; });
    const bool wholeDone = whole != record.marks.end() && whole->state == MarkState::done;
    for (const WorkMark& mark : record.marks)
        if (mark.step == said.step && (!mark.note || among(mark.note, said.notes)))
            out.said.takenBack.emplace_back(mark.step, mark.note);
    if (!wholeDone || said.notes.empty()) return;
    for (int n = 1; n <= record.piano.notes; ++n)
        if (!among(NoteNumber{n}, said.notes))
            out.said.marks.push_back({.step = said.step, .note = NoteNumber{n}, .remark = whole->remark});
}

} // namespace

Outcome<WorkDone> sayStep(const StepSaid& said, const PianoRecord& record, const Plan* plan, const std::string& uuid) {
    const StepOfWork* step = findStep(said.step);
    if (!step || !offered(*step, record.piano)) return refuse(RefusalCode::noSuchStep, said.step);
    if (said.what == StepSaid::What::notHere && said.remark.empty()) return refuse(RefusalCode::reasonMissing);
    WorkDone out;
    if (said.what == StepSaid::What::undone) {
        takeBack(out, said, record);
        return out;
    }
    out.said.marks = marksOf(said);
    if (said.what == StepSaid::What::notHere) return out;
    mendFindings(out, said, record);
    if (plan) tickLines(out, said, record, *plan, uuid);
    return out;
}

} // namespace hammerline
