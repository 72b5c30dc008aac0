// What became of typed or imported readings, said once for both.
#pragma once

#include "core/intake/intake.h"

namespace hammerline::app {

/// Prints what was taken, asked and refused; status 1 where anything is left to decide.
int reportIntake(const Intake&, const Piano&, int pass, std::size_t taken, bool json);

/// Doubtful values taken on purpose leave the questions and join the sound ones.
void takeDoubtful(Intake&, const std::string& reason);

} // namespace hammerline::app
