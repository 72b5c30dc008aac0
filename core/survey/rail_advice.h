// When so many let-off screws do not turn that the whole rail is a specialist's work.
#pragma once

#include "core/survey/survey.h"

namespace hammerline {

/// More than a twentieth of the let-off screws are open as seized, broken or stripped (scenario S4).
bool letOffRailFirst(std::span<const Finding>, const Piano&);

} // namespace hammerline
