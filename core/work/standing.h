// How every step of the work stands on a piano: waits, open, part done, done, not needed here; from what the book holds
// (marks by hand, findings, readings, lines of the plan).
#pragma once

#include "core/survey/job.h"
#include "core/survey/work_mark.h"
#include "core/work/evidence.h"

namespace hammerline {

enum class StepState : std::uint8_t { waits, open, partDone, done, notHere };
std::string_view key(StepState);

/// What an open step asks for: to be done and ticked, to be read, parts to be mended, lines of the plan to be carried
/// out, trial notes to be turned, or what was worked on to be read again.
enum class StepAsks : std::uint8_t { tick, read, mend, turn, trial, readAgain };
std::string_view key(StepAsks);

/// What the plan in force says of one step.
struct LinesOfStep {
    std::vector<NoteNumber> open, done;
    int openLines = 0, doneLines = 0;
    double minutes = 0; // of the open ones
};

/// What the last pass with readings says of one dimension.
struct ReadFacts {
    std::vector<NoteNumber> read, outside;
    std::int64_t order = 0; // of the newest reading
};

/// The book as far as the work asks it.
struct WorkFacts {
    const Piano& piano;
    std::span<const Finding> findings;
    std::span<const WorkMark> marks;
    JobTerms terms;
    std::map<std::string_view, LinesOfStep> lines; // by step
    std::map<DimensionId, ReadFacts> readings;
    std::vector<NoteNumber> trial;          // to be turned before all others
    std::optional<OperationId> trialOf;     // what is tried on them
    bool trialTurned = false;               // and has to be read now
    std::vector<NoteNumber> readAgain = {}; // worked on and not read since
    int readingsAsFound = 0;                // of the first pass
    bool partOff = false;                   // one that no list knows, and that has to go back
    bool whole = true;                      // the whole job is wanted, not only what readings and findings ask for
};

struct StepNow {
    const StepOfWork* step = nullptr;
    StepState state = StepState::open;
    StepAsks asks = StepAsks::tick;
    std::vector<std::string_view> waitsFor;   // steps
    std::set<std::string> supplies;           // parts that have to come first
    std::vector<NoteNumber> notes, doneNotes; // left to do, done; both empty for a step of the whole piano
    std::vector<std::string_view> parts;      // to mend
    int lines = 0;                            // of the plan, left
    std::optional<DimensionId> dimension;     // to read
    std::optional<OperationId> operation;     // to try
    std::string_view reason;                  // of notHere, and of what is done without a tick; see reasonKeys
    std::string remark;                       // typed with the tick
    double minutes = 0;                       // left
    std::int64_t spent = 0;                   // seconds, where said
    bool begun = false;                       // something of it was done
    bool openNow() const { return state == StepState::open || state == StepState::partDone; }
    bool settled() const { return state == StepState::done || state == StepState::notHere; }
};

/// by-hand; sound (all of its parts were looked at); in-order (its readings are); gone-past (later work is done);
/// part-off (of hand-over: a part that has to go back is off);
/// not-asked (the whole job was not asked for); no-work (nothing behind it asks for it); comes-later (something does,
/// and other work is next).
std::span<const std::string_view> stepReasonKeys();

/// Of every step that this piano has, in the order of work.
std::vector<StepNow> stepsNow(const WorkFacts&);
/// Minutes left of all of them.
double minutesLeft(std::span<const StepNow>);

} // namespace hammerline
