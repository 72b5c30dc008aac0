// The least work that brings one note in: height, dip, lost motion, blow, let-off and aftertouch hang together
// (computation 9.3). Everything in mm; a move's amount is the change of what it serves ("let-off farther by 1"), so no
// pitch of a screw enters.
#pragma once

#include "core/operation/operation.h"
#include "core/plan/least_largest.h"

#include <array>
#include <optional>

namespace hammerline {

/// The dimensions that hang together, in the order of work. Height is key-height or sharp-height.
enum class Core : std::uint8_t { height, dip, lostMotion, blow, letOff, aftertouch };
inline constexpr std::size_t kCoreCount = 6;
constexpr std::size_t place(Core core) {
    return static_cast<std::size_t>(core);
}
DimensionId dimensionOf(Core, KeyColour);

/// Where a dimension may end: its zone shrunk by what the gauge cannot tell, stretched to where it stands if that is
/// well enough. Open sides are infinite.
struct Goal {
    double low, nominal, high;
};

struct CoreNote {
    std::array<double, kCoreCount> value{};
    std::array<std::optional<Goal>, kCoreCount> goal{}; // none: not known, or no zone: not judged
};

struct CoreMove {
    OperationId operation;
    Core own;                                 // what it serves
    std::array<double, kCoreCount> effects{}; // per mm of its own change
    double minutes = 0;
    Bounds bounds{};
};
inline constexpr std::size_t kMostMoves = 5;

/// Which moves are taken, by how much, and the largest deviation that is left (in the goals' widths: over 1 = not in).
struct NoteWork {
    std::array<double, kMostMoves> amounts{};
    unsigned taken = 0; // bit per move
    double largest = 0;
    double minutes = 0;
};

class NoteWorker {
public:
    explicit NoteWorker(std::span<const CoreMove> moves);

    /// True where every goal is met as it stands.
    static bool met(const CoreNote&);
    /// The fewest minutes; among as many the least largest deviation; among those each move's own dimension as near its
    /// nominal as that allows. `allowed`: the moves that may be used. None: no set of them brings everything in.
    std::optional<NoteWork> leastWork(const CoreNote&, unsigned allowed);
    /// The minutes of leastWork alone, for weighing common moves: the first set that serves ends the search.
    std::optional<double> leastMinutes(const CoreNote&, unsigned allowed);
    /// The amounts for just these moves, whether or not everything comes in.
    NoteWork by(const CoreNote&, unsigned taken);
    /// The amounts that put each taken move's own dimension at its nominal; a front punching may serve the aftertouch.
    NoteWork toNominal(const CoreNote&, unsigned taken, bool dipFloats) const;
    std::array<double, kCoreCount> after(const CoreNote&, const NoteWork&) const;

private:
    bool nominal(const CoreNote&, NoteWork&, bool dipFloats) const;
    void towardNominal(const CoreNote&, NoteWork&) const;
    bool couldReach(const CoreNote&, unsigned taken) const;
    /// By these moves everything that has a goal comes in; none where it does not.
    std::optional<NoteWork> bringIn(const CoreNote&, unsigned taken);

    std::span<const CoreMove> m_moves;
    std::vector<unsigned> m_subsets; // by minutes
    LeastLargest m_programme;
    std::array<std::array<double, kMostMoves>, kCoreCount> m_effects{};
};

} // namespace hammerline
