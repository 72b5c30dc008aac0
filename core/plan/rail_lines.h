// Straight lines over a piece of the rest rail, by how many hammers each brings inside their blow.
#pragma once

#include <vector>

namespace hammerline {

/// A note of the piece; blows in mm.
struct BlowNote {
    double note{};        // place along the piece, 0 at its first note
    double value{};       // blow of the rail
    double low{}, high{}; // where it may end
    double nominal{};
    /// Two ends that touch count as inside, whatever the last bit says.
    bool inside(double change) const;
};

/// How the blow changes along the piece.
struct RailLine {
    double level{}, slope{}; // mm, and mm a note
    double at(double note) const { return level + slope * note; }
};

int insideBy(const std::vector<BlowNote>&, const RailLine&);
/// The line with the most notes inside among none at all, level ones, and those through two interval ends, one in the
/// first third of the piece and one in the last. `length` in notes.
RailLine mostInside(const std::vector<BlowNote>&, double length);

} // namespace hammerline
