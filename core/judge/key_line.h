// The piano's own key line, from which the height of a natural is counted (computation 9.1).
#pragma once

#include <optional>
#include <span>

namespace hammerline {

/// Height of one natural: `place` 0 at the lowest note of the piano, 1 at the highest; `height` in mm over any datum.
struct NaturalHeight {
    double place{};
    double height{};
};

/// level + tilt (place - 1/2) + crown 4 place (1 - place), mm. The crown is 0 or more: a line that hangs is a fault,
/// one that rises to at most 0.8 mm in the middle is a maker's choice.
struct KeyLine {
    double level{};
    double tilt{};
    double crown{};
    int trusted{}; // naturals that lie along it
    double at(double place) const;
};

inline constexpr double kGreatestCrown = 0.8; // mm (bench-practice 2.1)

/// Fits the line to the naturals that can be trusted. Felts are crushed and rails sink; nothing makes a key rise by
/// itself. A fit to all naturals would therefore lie too low and split a hump in two halves, so naturals that are sunk
/// *together* (running median of seven below the line by more than the noise of single keys) lose their trust and the
/// line is fitted again, until the trusted ones stay the same. Single odd keys are held off by Tukey's weights.
/// Where fewer than half of the naturals keep their trust a tilt cannot be told from a hump that reaches to one end:
/// the line is then level through the highest running median ("its own top", computation 14). Fewer than seven
/// naturals: straight by the median of slopes; fewer than three: level at their median. None given: 0. Where the crown
/// is said (mm at the middle, 0: straight) it is taken as it is, and only level and tilt are fitted.
KeyLine fitKeyLine(std::span<const NaturalHeight>, std::optional<double> crown = {});

} // namespace hammerline
