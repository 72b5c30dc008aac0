// The units a technician types: their size in whole smallest units, exactly.
#pragma once

#include "core/units/exact.h"
#include "core/units/quantity.h"

namespace hammerline {

/// Smallest units (nm, mg, 0.001 %) in one unit, as the exact fraction numerator/denominator.
struct UnitSize {
    Wide numerator;
    Wide denominator;
};
UnitSize sizeOf(Unit);

} // namespace hammerline
