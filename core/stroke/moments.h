// The moments of a stroke that are looked at, and the key travel at each.
#pragma once

#include "core/stroke/drawn_note.h"

namespace hammerline {

enum class Moment : std::uint8_t {
    rest,
    damper, // stirs
    letOff,
    bottom, // a grand's drop with it
    check,
};

/// Those that the note has: no damper without one, no check where the jack does not escape.
std::vector<Moment> momentsOf(const DrawnNote&);
/// mm at the key's front, as the readings tell it; a damper's place is where the drawn hammer has come so far.
double travelAt(const DrawnNote&, Moment);
/// The last moment that has come at that travel.
Moment momentAt(const DrawnNote&, double travel);

} // namespace hammerline
