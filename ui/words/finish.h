// How far the piano is, said in a sentence: its grade by all that is known, and when to stop.
#pragma once

#include "core/plan/finish_line.h"
#include "core/plan/from_samples.h"

#include <QString>

namespace hammerline::words {

/// "Even. About 2 of 616 cells plainly outside, at most 5. Stop: nothing more is worth its minutes."
QString finishSentence(const FinishLine&);
/// "From samples: key dip is out at 5 of 10 notes read; front punchings on all 88 about 55 minutes (30 to 80)."
QString samplesSentence(const FromSamples&, const Piano&);

} // namespace hammerline::words
