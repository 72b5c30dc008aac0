// Who regulates the virtual piano: two that go by the handbook, and one that goes by the program (computation 13).
#pragma once

#include "core/history/record.h"
#include "tests/virtual_action/workshop.h"

#include <functional>
#include <string>

namespace virtual_action {

struct Played {
    Minutes minutes;                    // until done, or until given up
    int passes = 0;                     // through the keyboard, as the player counts them
    bool finished = false;              // at most 1 % of the cells truly outside by more than 1/8 of their zone
    bool nearly = false;                // at most 5 % plainly outside at that moment
    std::vector<std::string> conflicts; // named by the program
    hammerline::PianoRecord record;     // as the book would hold it (of the program's player)
};

inline constexpr int kMostPasses = 8;

/// A good technician with the handbook. Shims a sunk section first, then works one dimension at a time in published
/// order, with a three-note trial per kind of screw. What reads nearer than one u to a limit is doubtful and read
/// again, up to three times; what nobody touched since counts with the mean of its readings. Re-reads what was touched
/// and goes once more, and keeps dip inside its zone while setting aftertouch, the let-off giving what is missing
/// inside its own; then the whole again. On a grand the capstans set the blow, after the heights.
Played playGoodHandbook(Workshop&, const hammerline::SpecSheet&);
/// The same, but after the first time reads only what was disturbed or is doubtful.
Played playEconomicalHandbook(Workshop&, const hammerline::SpecSheet&);
/// Looks on as the program's player goes: what the book says by then, and what is true.
enum class Moment : std::uint8_t { read, worked };
using Watch = std::function<void(Moment, const hammerline::PianoRecord&, const Action&)>;
/// Measure, plan, work, read what the plan asks for.
Played playProgram(Workshop&, const hammerline::SpecSheet&);
Played watchProgram(Workshop&, const hammerline::SpecSheet&, const Watch&);

} // namespace virtual_action
