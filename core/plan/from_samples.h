// What a few sample notes say of the whole keyboard: how long the single work of a dimension would take on all notes.
#pragma once

#include "core/judge/judge.h"
#include "core/operation/operation.h"

namespace hammerline {

struct FromSamples {
    DimensionId dimension;
    OperationId operation; // the single work that serves it
    int read = 0, out = 0; // notes read, and of those outside their zone
    int all = 0;           // notes that have it
    double minutes = 0;    // out/read of all, with the way there and back
    double low = 0, high = 0;
};

/// The dimensions of which five notes or more, but fewer than half, are read and some lie outside. `low` and `high`:
/// the same minutes at the ends of the score interval of 95 % for a share (E. B. Wilson, "Probable inference, the law
/// of succession, and statistical inference", J. Am. Stat. Assoc. 22, 1927). It takes the samples for drawn at random:
/// sample notes spread over the keyboard come near that; notes read because they were felt to be bad do not.
std::vector<FromSamples> fromSamples(const Piano&, const Review&);

/// Share with the ends of that interval, for `hits` of `n` > 0.
struct ShareInterval {
    double share, low, high;
};
ShareInterval scoreInterval(int hits, int n);

} // namespace hammerline
