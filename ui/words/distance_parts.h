// The two parts a distance lies between, for drawing it.
#pragma once

#include "core/piano/dimension.h"

#include <QString>

namespace hammerline::words {

struct DistanceParts {
    QString fixed;      // "string"
    bool crown = false; // what moves is a hammer's crown, else a flat end
};
DistanceParts partsOfDistance(DimensionId);
/// On the slip, between its far end and the aim.
QString goodOnSlip();

} // namespace hammerline::words
