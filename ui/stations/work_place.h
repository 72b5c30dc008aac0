// Where a step of the work is done in the window: the station and the cell to stand at.
#pragma once

#include "core/piano/dimension.h"
#include "core/work/next.h"

#include <QString>

#include <optional>

namespace hammerline {

/// What is asked before a screw is turned: a page of the Work station, shown by this name.
inline constexpr QLatin1String kQuestionsStep("questions");

struct WorkPlace {
    QString station;          // its id
    std::optional<Cell> cell; // to stand at
    QString step;             // to be shown there; empty: none
};

/// Readings are taken at Measure, parts put right at Survey; lines of the plan are carried out, and all else is ticked,
/// at Work.
WorkPlace placeOf(const StepNow&);
/// The same for what comes next; without a piano it is the Piano station.
WorkPlace placeOf(const NextAct&);

} // namespace hammerline
