// How far the piano is, said in a sentence: its grade by all that is known, and when to stop.
#pragma once

#include "core/plan/finish_line.h"

#include <QString>

namespace hammerline::words {

/// "Even. About 2 of 616 cells plainly outside, at most 5. Stop: nothing more is worth its minutes."
QString finishSentence(const FinishLine&);

} // namespace hammerline::words
