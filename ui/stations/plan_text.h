// What is said beside the lines of the plan, as HTML.
#pragma once

#include "core/sheet/adjustment_sheet.h"
#include "ui/stations/station_words.h"

namespace hammerline {

/// Why a line is there: its reading against the zone, what the list starts from, what else moves with it, how this
/// piano answers.
QString whyText(const AdjustmentLine&, const AdjustmentWork&, const std::optional<Zone>&, const Plan&, const PassView&,
                const Piano&);
/// What is to be mended first, a line each; HTML.
QString mendText(const AdjustmentSheet&);
/// What a turn does, its cap and what stops it.
QString workText(const AdjustmentWork&, const Piano&);
/// Readings out now and after the plan by dimension, conflicts, what is left out, how the piano answers.
QString planText(const Plan&, const PassView&, const PianoRecord&, const AdjustmentSheet&);

} // namespace hammerline
