// What belongs to one visit.
#pragma once

#include "core/pass/pass.h"

namespace hammerline {

/// Whether both passes belong to one visit: the same working day where both say when, and within one per cent of wood
/// moisture where both say the air.
bool inOneVisit(const Pass& from, const Pass& to);

} // namespace hammerline
