// What a trial of a kind of screw said, in the trade's words.
#pragma once

#include "core/history/trial.h"

#include <QString>

namespace hammerline::words {

/// Empty where there is nothing to tell but that the piano answers as believed.
QString trialSentence(const TrialAnswer&, const Piano&);

} // namespace hammerline::words
