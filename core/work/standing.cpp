#include "core/work/standing.h"

#include "core/work/reads.h"
#include "core/work/repairs.h"
#include "core/work/ways.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 5> kStepStates = {"waits", "open", "part-done", "done", "not-here"};
constexpr std::array<std::string_view, 6> kStepAsks = {"tick", "read", "mend", "turn", "trial", "read-again"};
constexpr std::array<std::string_view, 8> kStepReasons = {"by-hand",   "sound",   "in-order", "gone-past",
                                                          "not-asked", "no-work", "part-off", "comes-later"};
/// So many readings are a look at the piano as found (one natural near each end of each section, five dimensions).
constexpr int kEnoughAsFound = 20;
constexpr double kMostLookedAt = 0.5; // share of the parts

/// Newest marks of one step.
struct MarksOfStep {
    const WorkMark* whole = nullptr;
    std::vector<NoteNumber> done;
    std::int64_t order = 0, spent = 0;
};

std::map<std::string_view, MarksOfStep> marksByStep(std::span<const WorkMark> marks) {
    std::map<std::string_view, MarksOfStep> out;
    for (const WorkMark& mark : marks) {
        MarksOfStep& of = out[mark.step];
        of.order = std::max(of.order, mark.order);
        of.spent += mark.seconds;
        if (!mark.note)
            of.whole = &mark;
        else if (mark.state == MarkState::done)
            of.done.push_back(*mark.note);
    }
    for (auto& [id, each] : out)
        std::sort(each.done.begin(), each.done.end());
    return out;
}

std::vector<NoteNumber> everyNote(const Piano& piano) {
    std::vector<NoteNumber> out;
    for (int n = 1; n <= piano.notes; ++n)
        out.push_back({n});
    return out;
}

using work::without;

class Stander {
public:
    explicit Stander(const WorkFacts& facts)
        : m_facts(facts), m_marks(marksByStep(facts.marks)), m_repairs(work::repairsByStep(facts)) {}

    std::vector<StepNow> all() {
        for (const StepOfWork* step : stepsOf(m_facts.piano))
            m_steps.push_back(alone(*step));
        passOver();
        openTheWays();
        hold(m_steps);
        return std::move(m_steps);
    }

private:
    double minutesOf(const StepOfWork& step, std::size_t notes) const {
        const double each = step.minutes[static_cast<std::size_t>(m_facts.terms.hand)];
        if (step.per == PartUnit::note) return each * static_cast<double>(notes);
        return step.per == PartUnit::section ? each * static_cast<double>(sectionsOf(m_facts.piano).size()) : each;
    }

    void settleAs(StepNow& now, StepState state, std::string_view reason = {}) const {
        now.state = state;
        now.reason = reason;
        now.notes.clear();
        now.minutes = 0;
        now.dimension.reset();
        now.asks = StepAsks::tick;
    }

    /// What a person said last: the whole step, unless something to do was found or read after that.
    bool byHand(StepNow& now, const MarksOfStep& marks, std::int64_t newest) const {
        if (!marks.whole || marks.whole->order < newest) return false;
        now.remark = marks.whole->remark;
        const bool done = marks.whole->state == MarkState::done;
        settleAs(now, done ? StepState::done : StepState::notHere, done ? std::string_view{} : "by-hand");
        now.begun = done;
        return true;
    }

    bool byRepairs(StepNow& now, const work::RepairsOfStep& repairs) const {
        now.begun = now.begun || !repairs.mended.empty();
        if (repairs.toDo.empty()) return false;
        now.asks = StepAsks::mend;
        now.parts = repairs.parts;
        now.supplies = repairs.missing;
        now.notes = repairs.wholePiano ? std::vector<NoteNumber>{} : repairs.toDo;
        now.doneNotes = repairs.wholePiano ? std::vector<NoteNumber>{} : without(repairs.mended, repairs.toDo);
        now.minutes = repairs.minutes;
        now.state = repairs.mended.empty() ? StepState::open : StepState::partDone;
        if (repairs.allMissing) now.state = StepState::waits;
        return true;
    }

    bool byLines(StepNow& now, const LinesOfStep& lines) const {
        now.begun = now.begun || lines.doneLines > 0;
        now.doneNotes = lines.done;
        if (lines.openLines == 0) return false;
        now.asks = StepAsks::turn;
        now.notes = lines.open;
        now.lines = lines.openLines;
        now.minutes = lines.minutes;
        now.state = lines.doneLines > 0 ? StepState::partDone : StepState::open;
        return true;
    }

    /// Ticks at single notes: what is left is every other note.
    bool byNotes(StepNow& now, const MarksOfStep& marks) const {
        if (marks.done.empty()) return false;
        now.begun = true;
        now.doneNotes = marks.done;
        now.notes = without(everyNote(m_facts.piano), marks.done);
        now.minutes = minutesOf(*now.step, now.notes.size());
        now.state = StepState::partDone;
        if (now.notes.empty()) settleAs(now, StepState::done);
        return true;
    }

    /// Steps that the book tells of in its own way.
    bool byItself(StepNow& now) const {
        const std::string_view id = now.step->id;
        if (id == "read-as-found") {
            now.begun = m_facts.readingsAsFound > 0;
            now.asks = StepAsks::read;
            if (m_facts.readingsAsFound >= kEnoughAsFound) settleAs(now, StepState::done);
            return m_facts.readingsAsFound > 0;
        }
        if (id == "survey-action") {
            if (!m_facts.whole) return settleAs(now, StepState::notHere, "not-asked"), true;
            const double share = work::shareLookedAt(m_facts);
            now.begun = share >= kMostLookedAt; // a word at the first look is no survey on the bench
            now.minutes *= 1 - share;
            if (share == 1) settleAs(now, StepState::done);
            if (share > 0 && share < 1) now.state = StepState::partDone;
            return share > 0;
        }
        const bool trial = id == "trial-notes" && !m_facts.trial.empty();
        const bool again = id == "second-look" && !m_facts.readAgain.empty();
        if (!trial && !again) return false;
        now.asks = trial && !m_facts.trialTurned ? StepAsks::trial : StepAsks::readAgain;
        if (trial) now.operation = m_facts.trialOf;
        if (trial) now.dimension = row(*m_facts.trialOf).serves;
        now.notes = trial ? m_facts.trial : m_facts.readAgain;
        return true;
    }

    StepNow alone(const StepOfWork& step) const {
        StepNow now;
        now.step = &step;
        now.minutes = minutesOf(step, static_cast<std::size_t>(m_facts.piano.notes));
        const auto marksHere = m_marks.find(step.id);
        const MarksOfStep marks = marksHere == m_marks.end() ? MarksOfStep{} : marksHere->second;
        const auto repairsHere = m_repairs.find(step.id);
        const bool hasRepairs = repairsHere != m_repairs.end();
        const work::RepairsOfStep repairs = hasRepairs ? repairsHere->second : work::RepairsOfStep{};
        const auto linesHere = m_facts.lines.find(step.id);
        const LinesOfStep lines = linesHere == m_facts.lines.end() ? LinesOfStep{} : linesHere->second;
        const work::ReadsOfStep reads = work::readsOf(step, m_facts);
        now.spent = marks.spent;
        const bool asksByReading = lines.openLines > 0 || reads.outsideWords;
        const std::int64_t newest = std::max(repairs.order, asksByReading ? reads.order : 0);
        if (byHand(now, marks, newest)) return now;
        if (byRepairs(now, repairs) || byLines(now, lines)) return now;
        if (reads.outsideWords) {
            now.notes = reads.outside;
            now.minutes = minutesOf(step, now.notes.size());
            return now;
        }
        if (byNotes(now, marks) || byItself(now)) return now;
        if (now.begun && (reads.well || reads.unread.empty() || !m_facts.whole))
            return settleAs(now, StepState::done), now;
        if (reads.any && reads.well && reads.outside.empty()) return settleAs(now, StepState::done, "in-order"), now;
        const bool onlyParts = hasRepairs && !reads.first;
        if (onlyParts && repairs.looked) return settleAs(now, StepState::notHere, "sound"), now;
        if (now.begun) now.state = StepState::partDone;
        if (!reads.unread.empty() && !step.operations.empty()) {
            now.asks = StepAsks::read;
            now.dimension = reads.firstUnread;
            now.notes = reads.unread;
        }
        if (!m_facts.whole) settleAs(now, StepState::notHere, "not-asked");
        return now;
    }

    /// Every step that stands before this one.
    void collect(const StepOfWork& step, std::set<std::string_view>& before) const {
        for (const std::string_view need : needsOf(step, m_facts.piano))
            if (before.insert(need).second) collect(*findStep(need), before);
    }

    /// Routine that nobody ticked, where later work has begun.
    void passOver() {
        std::set<std::string_view> before;
        for (const StepNow& each : m_steps)
            if (each.begun) collect(*each.step, before);
        for (StepNow& each : m_steps) {
            const bool routine = each.asks == StepAsks::tick && each.notes.empty() && !each.begun;
            if (routine && each.state == StepState::open && before.contains(each.step->id))
                settleAs(each, StepState::notHere, "gone-past");
        }
    }

    /// A step does not hold others up where only parts that are no must are still to come.
    bool holdsUp(const StepNow& now) const {
        if (now.settled()) return false;
        const auto repairs = m_repairs.find(now.step->id);
        const bool awaited = now.state == StepState::waits && now.waitsFor.empty() && !now.supplies.empty();
        return !awaited || repairs == m_repairs.end() || repairs->second.blocking;
    }

    /// The nearest steps before this one that are not settled; through one that only its readings or parts call done,
    /// to what lies before it. What was ticked off, or is not asked for, hides what was found since: the other notes go
    /// on.
    void lookBack(const StepOfWork& step, std::span<const StepNow> steps, std::set<std::string_view>& seen,
                  std::vector<std::string_view>& open) const {
        for (const std::string_view need : needsOf(step, m_facts.piano)) {
            if (!seen.insert(need).second) continue;
            const auto before = std::ranges::find_if(steps, [&](const StepNow& s) { return s.step->id == need; });
            if (before == steps.end()) continue;
            if (holdsUp(*before)) open.push_back(need);
            const bool byTheBook = before->state == StepState::done && !before->reason.empty();
            if (byTheBook) lookBack(*before->step, steps, seen, open);
        }
    }

    /// A step waits for what is not settled before it.
    void hold(std::vector<StepNow>& steps) const {
        const std::vector<StepNow> before = steps;
        for (StepNow& each : steps) {
            if (each.settled()) continue;
            std::set<std::string_view> seen;
            lookBack(*each.step, before, seen, each.waitsFor);
            // Who enters findings is looking, whatever routine before it nobody ticked.
            const bool looking = each.step->id == "survey-action" && each.state == StepState::partDone;
            if (!each.waitsFor.empty() && !looking) each.state = StepState::waits;
            if (m_facts.partOff && each.step->id == "hand-over") {
                each.state = StepState::waits;
                each.reason = "part-off";
            }
        }
    }

    void openTheWays() {
        std::vector<StepNow> held = m_steps;
        hold(held);
        work::WaysKnown known{.piano = m_facts.piano, .whole = m_facts.whole, .saidAt = {}};
        for (const auto& [id, marks] : m_marks)
            known.saidAt[id] = marks.order;
        work::openTheWays(m_steps, held, known);
    }

    const WorkFacts& m_facts;
    std::map<std::string_view, MarksOfStep> m_marks;
    std::map<std::string_view, work::RepairsOfStep> m_repairs;
    std::vector<StepNow> m_steps;
};

} // namespace

std::string_view key(StepState state) {
    return kStepStates.at(static_cast<std::size_t>(state));
}

std::string_view key(StepAsks asks) {
    return kStepAsks.at(static_cast<std::size_t>(asks));
}

std::span<const std::string_view> stepReasonKeys() {
    return kStepReasons;
}

std::vector<StepNow> stepsNow(const WorkFacts& facts) {
    return Stander(facts).all();
}

double minutesLeft(std::span<const StepNow> steps) {
    double sum = 0;
    for (const StepNow& each : steps)
        sum += each.minutes;
    return sum;
}

} // namespace hammerline
