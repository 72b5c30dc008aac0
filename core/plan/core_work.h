// The coupled work of every note on the bench, with amounts that a hand and a stock of punchings can do.
#pragma once

#include "core/plan/bench.h"
#include "core/plan/note_work.h"

namespace hammerline {

/// One thing to do at a note: its own dimension goes from `now` to `aim`.
struct NoteTask {
    OperationId operation{};
    DimensionId serves{};
    double aim{};
    double from{};                // where it is expected to be before this task
    double change{};              // of what it serves, after rounding to what can be done
    std::optional<double> amount; // in the operation's unit; none where nothing is learned
    std::optional<double> atPart; // mm at the part, from the arms
    std::vector<Length> stack;
    std::string_view why;
};

struct NotePlan {
    NoteNumber note;
    std::vector<NoteTask> tasks; // in order of work
    std::optional<Conflict> conflict;
};

class CoreWork {
public:
    explicit CoreWork(const Bench&);
    /// Minutes of the least work of a note as it stands on that bench, with a charge for what cannot be brought in.
    double minutes(const Bench&, NoteNumber);
    /// The work of one note; its state is moved on. Empty where nothing asks.
    NotePlan plan(Bench&, NoteNumber);

private:
    struct Reach {
        CoreNote note;
        unsigned allowed = 0, lastResort = 0;
        bool asks = false;
        bool forItsZone = false; // not only because it stands off its neighbours
    };
    /// `margin`: how much of what the gauge cannot tell the goals stay inside of their zones, 0 to 1.
    Reach reach(const Bench&, NoteNumber, double margin = 1) const;
    std::optional<NoteWork> leastWork(KeyColour, const Reach&);
    std::span<const CoreMove> moves(KeyColour c) const { return m_moves[static_cast<std::size_t>(c)]; }
    NoteWorker& worker(KeyColour c) { return m_workers[static_cast<std::size_t>(c)]; }
    std::optional<NoteWork> full(const Bench&, NoteNumber, const Reach&);
    NoteWork bestEffort(NoteNumber, KeyColour, const Reach&, const Bench&, std::optional<Conflict>&);
    Conflict conflictAt(const Bench&, NoteNumber, const CoreNote&) const;
    void carryOut(Bench&, NoteNumber, const Reach&, const NoteWork&, NotePlan&) const;

    std::array<std::vector<CoreMove>, 2> m_moves;
    std::vector<NoteWorker> m_workers;
};

/// The step of a screw: the largest binary fraction of a turn that changes at most a quarter of the zone, never under
/// 1/16 (computation 7).
double screwStep(double perTurn, const Goal& zone);

} // namespace hammerline
