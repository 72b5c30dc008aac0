// The figures of a step of the work, from the spec sheets of its kind of action: a step never names another figure than
// the one its readings are judged by.
#pragma once

#include "core/piano/piano.h"

#include <QString>

namespace hammerline::words {

/// A line with its {...} filled in. {key-dip natural}: from low to high, in mm, g or %, with the places where they
/// differ; {key-dip natural aim}, {... high}: that side alone; {key-dip step}: the greatest step to a neighbour. A
/// second sheet for the kind (an old action) follows the usual one where it says something else.
QString withFigures(const QString& line, const Piano&);

} // namespace hammerline::words
