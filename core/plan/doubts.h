// How doubtful each cell is for the grade: plainly outside, or off the line of its neighbours.
#pragma once

#include "core/plan/bench.h"

namespace hammerline {

/// What one cell says of the grade. Probabilities, 0 where nothing is known.
struct CellDoubt {
    double plainly = 0;  // that it lies outside its zone by more than an eighth of the zone's width
    double tooMuch = 0;  // of that, above it: what a look, which tells of below alone, cannot settle
    double uneven = 0;   // that it stands more than two evenness limits from the line of its neighbours
    double odd = 0;      // more than three
    bool reads = false;  // the mean of its own readings since it was last moved lies outside
    int readings = 0;    // since it was last moved
    bool counts = false; // known by a reading and judged; an aftertouch that is only computed does not
};

/// The nominal of the cell moved along with its neighbours: the median of what the three nearest on each side stand off
/// theirs, as they are known by now; of one section, in heights and dips of one colour. None from fewer than three.
std::optional<double> lineBeside(const Bench&, Cell);
/// What touch-up brings an uneven cell to: within 0.7 evenness limits of that line, inside its zone. None without both.
std::optional<Goal> evenGoal(const Bench&, Cell);

/// The doubts of all cells, from the states on the bench as they stand there.
///
/// Outside: P(x outside the zone widened by an eighth) of the normal state; where the cell's own readings lie outside,
/// at least as much as they alone say, so that neighbours and relation excuse nothing. What only the eye tells (lost
/// motion of a vertical, too little) is 1 % while the hammer was seen on its rail.
/// Uneven: e = (x - nominal) less the median of the same of the three nearest known notes on each side in the section
/// (naturals and sharps apart for heights and dip); its variance is 1.25 V. Two limits, because zones are wider than
/// one: a piano inside its zones has some 50 cells beyond one limit, one or two beyond two (simulated).
class Doubts {
public:
    explicit Doubts(const Bench&);
    const CellDoubt& at(Cell cell) const { return m_cells[place(cell)]; }

private:
    static std::size_t place(Cell cell) {
        return static_cast<std::size_t>(cell.note.value - 1) * kDimensionCount + cell.dimension.row;
    }
    void judgeOutside(const Bench&, Cell);
    void judgeEvenness(const Bench&, DimensionId);
    std::vector<CellDoubt> m_cells;
};

/// Good for this piano: in every dimension at most 8 % plainly outside (upper bound; of few cells
/// half a cell), no cell odd, nothing that stops a
/// note, no double strike, nothing that must be mended first, let-off known of all. Even: good, at most 1.5 % of all
/// cells plainly outside, none uneven, all that was asked known of all notes.
FinishLine finishLine(const Bench&, const Doubts&);

} // namespace hammerline
