// What the trials of a piano said up to now, for whoever tells it.
#pragma once

#include "core/history/trial.h"

namespace hammerline {

/// By operation that was tried, in catalogue order.
std::vector<TrialAnswer> trialsSaid(const PianoRecord&);

} // namespace hammerline
