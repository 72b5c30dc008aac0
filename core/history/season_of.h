// The spec sheet with the aim of the season in which a pass was read.
#pragma once

#include "core/history/record.h"
#include "core/spec/spec.h"

namespace hammerline {

/// The sheet as withSeasonsAim moves it, by the year that the job says and the climate of the pass. The sheet itself
/// where one of them is not known.
SpecSheet sheetInSeason(SpecSheet, const PianoRecord&, int pass);

} // namespace hammerline
