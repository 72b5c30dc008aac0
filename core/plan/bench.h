// Everything a plan looks at, gathered once: readings, zones, states, answers, findings, causes.
#pragma once

#include "core/history/learned.h"
#include "core/history/states.h"
#include "core/plan/note_work.h"
#include "core/plan/plan.h"

#include <bitset>

namespace hammerline {

/// What is decided for one note before single work is thought of.
struct NoteStanding {
    std::bitset<kDimensionCount> held;     // cells that a cause answers for: no single work
    std::bitset<kDimensionCount> accepted; // accepted as they are (a cause's remedy says so)
    std::bitset<kDimensionCount> asked;    // cells that asked for work as they were found
    std::bitset<kDimensionCount> uneven;   // more likely than not off the line of its neighbours, read twice
    bool blocked = false;
    bool strapTight = false; // its wire is bent back first; lost motion is read after that
    std::string_view cause;  // that moved or holds it, for the step's reason
};

/// A move of many notes at once.
struct CommonMove {
    OperationId operation;
    std::vector<NoteNumber> notes;
    std::map<int, double> amounts; // at screws or brackets, by the note they stand at, mm
    std::string why;
    double largest() const;
};

struct Bench {
    const PianoRecord& record;
    const PlanOptions& options;
    std::vector<Pass> passes; // with relative heights, up to the one that is planned
    Zones zones;
    std::vector<Cell> stale;
    Review reviewed;
    std::array<Ratio, 2> ratio;
    std::vector<Response> responses;
    Answers answers;
    std::vector<NoteState> notes; // as they stand, then as the plan is expected to leave them
    std::vector<NoteStanding> standing;
    std::vector<Cause> causes;
    std::vector<BlockedNote> blocked;
    std::vector<CommonMove> common;
    std::vector<std::string_view> askFirst;
    std::vector<TrialAnswer> tried = {}; // what trials said up to now

    const Piano& piano() const { return record.piano; }
    const Pass& pass() const { return passes.back(); }
    KeyColour colour(NoteNumber n) const { return colourOf(n, piano()); }
    double R(NoteNumber n) const { return ratio[static_cast<std::size_t>(colour(n))].value; }
    NoteState& state(NoteNumber n) { return notes[static_cast<std::size_t>(n.value) - 1]; }
    const NoteState& state(NoteNumber n) const { return notes[static_cast<std::size_t>(n.value) - 1]; }
    NoteStanding& stand(NoteNumber n) { return standing[static_cast<std::size_t>(n.value) - 1]; }
    const NoteStanding& stand(NoteNumber n) const { return standing[static_cast<std::size_t>(n.value) - 1]; }
    bool read(Cell) const;
    /// Standard uncertainty of one reading, trade units.
    double u(DimensionId) const;
    /// What is seen: the blow with the hammer held off its rail taken in.
    double shown(Cell) const;
};

/// Refuses noSuchPass.
Outcome<Bench> layOut(const PianoRecord&, const SpecSheet&, int pass, const PlanOptions&);

/// A zone in trade units, open sides infinite.
Goal zoneOf(const Zone&, DimensionId);
/// Probability that a value with this variance lies outside, the zone's limits being of the dimension's trade unit.
double outside(double value, double variance, const Goal& zone);
/// The zone shrunk by u on each side, at most 0.35 of its width and 0.65 of that side.
Goal shrunk(const Goal& zone, double u);

// A cell asks for work (simulated on pianos that need none and on worn ones):
/// by readings of its own outside the zone, where it is more likely out than in;
inline constexpr double kOutside = 0.5;
/// against two or more readings inside, where the state says clearly that it is out;
inline constexpr double kOutsideAgainstReadings = 0.7;
/// read three times, where that leaves a real doubt: another reading would not settle it;
inline constexpr int kReadingsDecide = 3;
inline constexpr double kOutsideDecided = 0.3;
/// and where it was moved and not read since, if even that leaves no doubt; else it is read first.
inline constexpr double kUnreadOutside = 0.9;
/// Beyond this a cell of a note that is worked anyway comes in with it.
inline constexpr double kComesAlong = 0.3;

/// The zone's limits with what only the eye tells taken in: lost motion of a vertical is too little below -0.1.
Goal limitsAt(const Bench&, Cell);
/// Probability that what is seen at the cell lies outside; 0 where nothing is known or nothing is asked.
double outsideAt(const Bench&, Cell);

/// The mean of its own readings since it was last moved, as it is shown, and whether it lies outside.
struct OwnReadings {
    double mean = 0;
    bool outside = false;
};
OwnReadings ownReadings(const Bench&, Cell);

/// Whether only the eye tells this cell's lower side: lost motion of a vertical whose zone begins at nothing.
bool toldByEye(const Bench&, Cell);
/// Whether only the eye tells this cell's lower side, and it saw the hammer on its rail since it was last moved.
bool seenOnRail(const Bench&, Cell);

/// Whether this cell asks for work. A piano whose readings all lie inside gets none.
bool asksForWork(const Bench&, Cell);

} // namespace hammerline
