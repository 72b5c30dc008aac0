#include "core/sheet/work_now.h"

#include "core/judge/judge.h"
#include "core/plan/plan_in_force.h"
#include "core/sheet/pass_view.h"
#include "core/survey/odd_parts.h"

#include <algorithm>

namespace hammerline {
namespace {

bool tickedIn(const PianoRecord& record, const Plan& plan, const Step& step) {
    return !plan.uuid.empty() && std::any_of(record.done.begin(), record.done.end(), [&](const Done& done) {
        return done.plan == plan.uuid && done.step == step.id;
    });
}

std::map<std::string_view, LinesOfStep> linesOf(const PianoRecord& record, const Plan& plan) {
    std::map<std::string_view, LinesOfStep> lines;
    for (const Step& line : plan.steps) {
        const StepOfWork* step = stepOf(line.operation, line.note, record.piano);
        if (!step) continue;
        LinesOfStep& of = lines[step->id];
        const bool ticked = tickedIn(record, plan, line);
        auto& notes = ticked ? of.done : of.open;
        if (line.note) notes.push_back(*line.note);
        ++(ticked ? of.doneLines : of.openLines);
        if (!ticked) of.minutes += line.minutes;
    }
    for (auto& [id, of] : lines)
        for (auto* notes : {&of.open, &of.done}) {
            std::sort(notes->begin(), notes->end());
            notes->erase(std::unique(notes->begin(), notes->end()), notes->end());
        }
    return lines;
}

/// Of every cell its newest reading, as far as nothing was done at it since.
std::map<DimensionId, ReadFacts> readFacts(const PianoRecord& record) {
    std::map<DimensionId, ReadFacts> out;
    std::set<Cell> seen;
    const Zones zones(sheetOf(record), record.piano, record.overrides);
    for (auto pass = record.passes.rbegin(); pass != record.passes.rend(); ++pass) {
        const auto stale = staleCells(record, *pass);
        const Review reviewed =
            review(record.piano, withRelativeHeights(record.piano, *pass), zones, Rule::plain, stale);
        for (const Judged& judged : reviewed.ranked) {
            if (judged.verdict == Verdict::missing || !seen.insert(judged.cell).second || judged.stale) continue;
            ReadFacts& facts = out[judged.cell.dimension];
            facts.read.push_back(judged.cell.note);
            const bool outside = judged.verdict == Verdict::low || judged.verdict == Verdict::high;
            if (outside) facts.outside.push_back(judged.cell.note);
            if (const auto cell = pass->cells.find(judged.cell); cell != pass->cells.end())
                facts.order = std::max(facts.order, cell->second.order());
        }
    }
    return out;
}

std::int64_t newestReading(const PianoRecord& record) {
    std::int64_t newest = 0;
    for (const Pass& pass : record.passes)
        for (const auto& [cell, measured] : pass.cells)
            newest = std::max(newest, measured.order());
    return newest;
}

/// The notes of everything that was carried out after the last reading.
std::vector<NoteNumber> notReadSince(const PianoRecord& record) {
    const std::int64_t newest = newestReading(record);
    std::set<NoteNumber> notes;
    for (const Done& done : record.done)
        if (done.order > newest) notes.insert(done.notes.begin(), done.notes.end());
    return {notes.begin(), notes.end()};
}

/// The first trial of the plan: its notes as long as one of them is not turned, then all of them, to be read.
void setTrial(WorkFacts& facts, const PianoRecord& record, const Plan& plan) {
    if (plan.trials.empty()) return;
    const Trial& trial = plan.trials.front();
    facts.trialOf = trial.operation;
    for (const Step& line : plan.steps) {
        const bool tried = line.operation == trial.operation && line.note &&
                           std::find(trial.notes.begin(), trial.notes.end(), *line.note) != trial.notes.end();
        if (tried && !tickedIn(record, plan, line)) facts.trial.push_back(*line.note);
    }
    facts.trialTurned = facts.trial.empty();
    if (facts.trialTurned) facts.trial = trial.notes;
    if (facts.trialTurned && facts.readAgain.empty()) facts.trial.clear(); // read since
}

BeforeWork beforeWork(const PianoRecord& record, const Plan* plan) {
    BeforeWork before;
    if (!plan) return before;
    before.bench = plan->setUp.waits();
    before.questions = openQuestions(*plan, record);
    for (const ToRead& each : plan->readNext)
        if (each.why == kHeldBack) {
            before.heldBack.push_back(each.cell.note);
            if (!before.heldBackIn) before.heldBackIn = each.cell.dimension;
        }
    const Pass* pass = record.pass(plan->pass);
    if (!pass) return before;
    const Zones zones(sheetOf(record), record.piano, record.overrides);
    const Review reviewed = review(record.piano, withRelativeHeights(record.piano, *pass), zones);
    for (const DoubtfulNote& each : reviewed.doubtful)
        before.doubtful.push_back(each.note);
    if (!reviewed.doubtful.empty()) before.suspect = reviewed.doubtful.front().suspect;
    return before;
}

} // namespace

bool wholeJobWanted(const PianoRecord& record) {
    const auto said = record.preferences.find("job");
    if (said != record.preferences.end()) return said->second != "asked";
    // Who ticked off how the job begins walks all of it, whatever is read on the way.
    const bool begun = std::any_of(record.marks.begin(), record.marks.end(), [](const WorkMark& mark) {
        const StepOfWork* step = findStep(mark.step);
        const bool first = step && step->part == WorkPart::before && step->id != "stand-it-safe"; // that every job has
        return first && mark.state == MarkState::done;
    });
    if (begun) return true;
    for (const Pass& pass : record.passes) {
        std::map<DimensionId, int> read;
        for (const auto& [cell, measured] : pass.cells)
            if (!measured.missing() && ++read[cell.dimension] * 2 >= record.piano.notes) return false;
    }
    return true;
}

WorkNow workNow(const PianoRecord& record, const Plan* plan) {
    WorkFacts facts{.piano = record.piano,
                    .findings = record.findings,
                    .marks = record.marks,
                    .terms = jobTerms(record.preferences),
                    .lines = {},
                    .readings = readFacts(record),
                    .trial = {},
                    .trialOf = {}};
    facts.readAgain = notReadSince(record);
    facts.partOff = oddPartIsMissing(record.preferences);
    facts.whole = wholeJobWanted(record);
    if (!record.passes.empty()) facts.readingsAsFound = static_cast<int>(record.passes.front().readingCount());
    if (plan) {
        facts.lines = linesOf(record, *plan);
        setTrial(facts, record, *plan);
    }
    WorkNow now;
    now.steps = stepsNow(facts);
    now.next = nextAct(now.steps, beforeWork(record, plan));
    now.whole = facts.whole;
    now.minutes = minutesLeft(now.steps);
    return now;
}

WorkNow workNow(const PianoRecord& record) {
    const bool read = !record.passes.empty() && record.passes.back().readingCount() > 0;
    if (!read) return workNow(record, nullptr);
    const auto plan = planInForce(record, sheetOf(record), record.passes.back().number, {});
    return workNow(record, plan ? &*plan : nullptr);
}

} // namespace hammerline
