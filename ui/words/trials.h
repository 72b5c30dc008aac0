// What a trial of a kind of screw said, in the trade's words.
#pragma once

#include "core/history/trial.h"
#include "core/operation/operation.h"

#include <QString>

namespace hammerline::words {

/// Empty where there is nothing to tell but that the piano answers as believed.
QString trialSentence(const TrialAnswer&, const Piano&);

/// "Let-off: first guess 5.2 mm a turn (4.1 to 6.3), by 7 pianos of this book built alike; customary 6. ..." Empty
/// where the guess is the customary one, or this piano has taught its own.
QString guessSentence(const Response&, const Piano&);

} // namespace hammerline::words
