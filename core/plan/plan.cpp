#include "core/plan/plan.h"

#include "core/history/season_of.h"
#include "core/plan/doubts.h"
#include "core/plan/outlook.h"
#include "core/plan/rod_work.h"
#include "core/plan/steps.h"
#include "core/survey/job.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace hammerline {

namespace {

/// In each section the second natural from each end and the sharp nearest its middle, of two the lower: the first and
/// last of each section are read, but not the very last note, where rail ends and cut hammers mislead (common practice,
/// no source). A section whose notes were read here and there, three to six of them, is worked at those.
std::vector<NoteNumber> trialNotesOf(const Section& section, const Bench& bench) {
    std::vector<NoteNumber> naturals, read;
    std::optional<NoteNumber> sharp;
    const double middle = (section.range.first + section.range.last) / 2.0;
    for (int n = section.range.first; n <= section.range.last; ++n) {
        if (bench.pass().value({{n}, dimension::keyDip}) || bench.pass().value({{n}, dimension::blow}))
            read.push_back({n});
        if (bench.colour({n}) == KeyColour::natural)
            naturals.push_back({n});
        else if (!sharp || std::abs(n - middle) < std::abs(sharp->value - middle))
            sharp = NoteNumber{n};
    }
    if (read.size() >= 3 && read.size() <= 6) return read;
    std::vector<NoteNumber> notes;
    if (naturals.size() > 1) notes = {naturals[1], naturals[naturals.size() - 2]};
    if (sharp) notes.push_back(*sharp);
    std::ranges::sort(notes);
    notes.erase(std::unique(notes.begin(), notes.end()), notes.end());
    return notes;
}

std::vector<NoteNumber> trialNotes(const Bench& bench) {
    std::vector<NoteNumber> notes;
    for (const Section& section : sectionsOf(bench.piano()))
        std::ranges::copy(trialNotesOf(section, bench), std::back_inserter(notes));
    return notes;
}

std::vector<NoteNumber> notesOfStage(const Bench& bench) {
    if (bench.options.stage == Stage::trial) return trialNotes(bench);
    std::vector<NoteNumber> notes;
    for (int n = 1; n <= bench.piano().notes; ++n)
        notes.push_back({n});
    return notes;
}

void planNote(Bench& bench, CoreWork& work, NoteNumber note, Plan& plan) {
    NotePlan notePlan = work.plan(bench, note);
    const auto word = wordWork(bench, note, notePlan);
    const auto own = bench.stand(note).blocked ? std::vector<OwnTask>{} : ownWork(bench, note, notePlan);
    for (const NoteTask& task : notePlan.tasks)
        plan.steps.push_back(noteStep(bench, note, task, task.change));
    if (word) plan.steps.push_back(noteStep(bench, note, word->task, word->way));
    for (const OwnTask& task : own)
        plan.steps.push_back(noteStep(bench, note, task.task, task.way));
    if (notePlan.conflict) plan.conflicts.push_back(*notePlan.conflict);
}

/// Only what fitted into the minutes is expected to be done.
void expectOnly(Bench& bench, const std::vector<NoteState>& found, Plan& plan) {
    bench.notes = found;
    std::set<NoteNumber> worked;
    for (const Step& step : plan.steps) {
        if (!step.note) continue; // common moves stand in `found`
        worked.insert(*step.note);
        const Response* response = bench.answers.at(step.operation, *step.note);
        if (!response || step.operation == operation::inspect) continue;
        if (step.amount)
            moveAt(bench.notes, bench.piano(), *step.note, *response, *step.amount);
        else
            setToAimAt(bench.notes, bench.piano(), *step.note, *response, step.aim, bench.u(step.aimDimension));
    }
    std::erase_if(plan.conflicts, [&](const Conflict& c) { return !worked.contains(c.note); });
}

/// The trial stage looks at its notes only, fully: what of the escapement was not read there is read next.
void readTrialNotes(const Bench& bench, const std::vector<NoteNumber>& notes, Plan& plan) {
    std::erase_if(plan.readNext, [&](const ToRead& each) {
        return std::find(notes.begin(), notes.end(), each.cell.note) == notes.end();
    });
    using namespace dimension;
    for (const NoteNumber note : notes)
        for (const DimensionId id : {keyHeight, sharpHeight, keyDip, lostMotion, blow, letOff, aftertouch})
            if (fitted(id, note, bench.piano()) && !bench.read({note, id}))
                plan.readNext.push_back({{note, id}, "trial"});
    std::stable_sort(plan.readNext.begin(), plan.readNext.end(),
                     [](const ToRead& a, const ToRead& b) { return a.cell < b.cell; });
}

/// Spoons are set against dampers that the pedal lifts evenly: wires first (situation 57, members' thread). A reading
/// of the lift or a word on the wires answers it.
void askAboutPedalLift(Bench& bench, const std::vector<Step>& steps) {
    const bool spoons =
        std::any_of(steps.begin(), steps.end(), [](const Step& s) { return s.operation == operation::spoonBend; });
    const auto asked = askedDimensions(bench.pass());
    const bool read = std::find(asked.begin(), asked.end(), dimension::damperRise) != asked.end();
    const bool said = std::any_of(bench.record.findings.begin(), bench.record.findings.end(), [](const Finding& f) {
        return f.part == "damper-wire" && f.state != FindingState::notLookedAt;
    });
    if (spoons && !read && !said) bench.askFirst.push_back("damper-wire");
}

/// What the survey has not answered comes before the deciding checks of the causes, each once.
void askAboutParts(Bench& bench) {
    auto asked = askBeforePlan(bench.record.findings, bench.piano(), bench.record.marks);
    for (const std::string_view each : bench.askFirst)
        if (std::find(asked.begin(), asked.end(), each) == asked.end()) asked.push_back(each);
    bench.askFirst = std::move(asked);
}

/// What the plan asks for, and whether it asks for nothing more.
void sumUp(const Bench& bench, Plan& plan) {
    FinishLine& line = *plan.finish;
    std::set<NoteNumber> worked;
    for (const Step& step : plan.steps)
        worked.insert(step.notes.begin(), step.notes.end());
    line.notes = static_cast<int>(worked.size());
    line.readings = static_cast<int>(plan.readNext.size());
    line.minutes = plan.minutes;
    for (const ToRead& each : plan.readNext)
        line.minutes += minutesOf(each);
    line.stop = plan.steps.empty() && plan.trials.empty() && plan.readNext.empty() && bench.blocked.empty() &&
                line.all.cells > 0;
}

/// On a bench that does not hold the keys as the piano did nothing is adjusted: the reference notes are read first.
Plan waitingPlan(Bench& bench, BenchSetUp setUp) {
    Plan plan;
    plan.pass = bench.pass().number;
    plan.options = bench.options;
    plan.ratio = bench.ratio;
    plan.responses = std::move(bench.responses);
    plan.causes = std::move(bench.causes);
    plan.blocked = std::move(bench.blocked);
    for (const Cell cell : setUp.toRead)
        plan.readNext.push_back({cell, "reference-note"});
    plan.setUp = std::move(setUp);
    return plan;
}

} // namespace

double minutesOf(const ToRead& read) {
    constexpr double kLook = 4.0 / 60;
    return read.why == kLookAtRail ? kLook : row(read.cell.dimension).seconds[0] / 60;
}

Outcome<Plan> makePlan(const PianoRecord& record, const SpecSheet& sheet, int pass, const PlanOptions& options) {
    const SpecSheet seasonal = sheetInSeason(sheet, record, pass);
    auto laid = layOut(record, seasonal, pass, options);
    if (!laid) return tl::unexpected(laid.error());
    Bench& bench = *laid;
    BenchSetUp setUp = benchSetUp(record, pass);
    if (setUp.waits()) return waitingPlan(bench, std::move(setUp));
    Plan plan;
    plan.finish = finishLine(bench, Doubts(bench));
    CoreWork work(bench);
    holdSharps(bench);
    takeOnCauses(bench, work);
    fitRestRail(bench, work);

    const std::vector<NoteState> found = bench.notes;
    for (const CommonMove& move : bench.common)
        plan.steps.push_back(commonStep(bench, move));
    // Naturals first: a sharp's height is read over theirs.
    const std::vector<NoteNumber> notes = notesOfStage(bench);
    for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp})
        for (const NoteNumber note : notes)
            if (bench.colour(note) == colour) planNote(bench, work, note, plan);
    // A few notes that are worked through first say nothing of a rod.
    if (options.stage != Stage::trial)
        for (Step& step : rodWork(bench))
            plan.steps.push_back(std::move(step));
    std::ranges::sort(plan.conflicts, {}, &Conflict::note);
    putInOrder(bench, plan.steps);
    if (options.minutes) {
        keepWithin(bench, plan.steps, *options.minutes);
        putInOrder(bench, plan.steps);
        expectOnly(bench, found, plan);
    }
    plan.trials = chooseTrials(bench, plan.steps);
    askAboutPedalLift(bench, plan.steps);
    askAboutParts(bench);
    plan.pass = pass;
    plan.options = options;
    plan.ratio = bench.ratio;
    plan.minutes = minutesOf(bench, plan.steps);
    lookAhead(bench, plan);
    for (const ToRead& each : readForRods(bench))
        plan.readNext.push_back(each);
    if (options.stage == Stage::trial) readTrialNotes(bench, trialNotes(bench), plan);
    sumUp(bench, plan);
    plan.responses = std::move(bench.responses);
    plan.causes = std::move(bench.causes);
    plan.blocked = std::move(bench.blocked);
    plan.askFirst = std::move(bench.askFirst);
    plan.setUp = std::move(setUp);
    return plan;
}

Outcome<FinishLine> finishOf(const PianoRecord& record, const SpecSheet& sheet, int pass) {
    const auto plan = makePlan(record, sheet, pass, {});
    if (!plan) return tl::unexpected(plan.error());
    return plan->finish.value_or(FinishLine{});
}

} // namespace hammerline
