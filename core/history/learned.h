// What trials and work taught of a piano: its answers, and what each trial said.
#pragma once

#include "core/history/trial.h"

namespace hammerline {

struct Learned {
    std::vector<Response> responses; // first guesses (or other pianos'), replaced where trials and work teach better
    std::vector<TrialAnswer> trials; // by operation that was tried: what its trial said
};

/// Whether what it changes follows from the key's arms and not from a screw's pitch or a bend.
bool isGeometry(OperationId, const Piano&);

/// How this piano answers. A trial that says nothing teaches nothing; no direction turns before two sets of three notes
/// say so; a number is learned only when its 95 % half width is below half of it. Punchings and pads are geometry:
/// their answer stays within 15 % of the arms'. Heights in the passes are those relative to the piano's own line
/// (judge's withRelativeHeights).
Learned learn(const PianoRecord&, std::array<double, 2> ratio);

} // namespace hammerline
