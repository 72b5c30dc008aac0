// What down and up weight say of a note: friction, weight, or both, and which of the two first.
#pragma once

#include "core/judge/touch_weight.h"
#include "core/pass/pass.h"

namespace hammerline {

/// friction: too much; weight: too heavy (hammers, leverage, leads gone, on an upright a spring); light: too little
/// weight, the key may not come home; hidden: much friction under little weight, as where leads were added for it;
/// loose: so little friction that a centre may wobble; right: neither is out.
enum class TouchSays : std::uint8_t { right, friction, weight, light, hidden, loose };
std::string_view key(TouchSays);

struct NoteTouch {
    NoteNumber note;
    double down{}, up{}; // g
    TouchWeight touch;
    double frictionOff{}, weightOff{}; // in half widths of the zone from its aim; beyond 1: outside
    std::vector<TouchSays> says;       // what is farther out first
};

/// Friction 6 to 16 g with 11 as the aim, to 20 in an old action; mean weight of an upright 34, 41, 48 g and of a grand
/// 34, 38, 42 g (a list post of 2000 on grands: 38 to 40; the upright's is widened, common practice, no source).
NoteTouch touchOf(NoteNumber, double down, double up, TouchWeight, const Piano&, bool old);
/// Of every note with both weights, by note. `old`: the sheet of an old action is in use.
std::vector<NoteTouch> touchesOf(const Pass&, const Piano&, bool old);

} // namespace hammerline
