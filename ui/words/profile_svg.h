// Readings of one dimension over the keyboard as a drawing (SVG) for a page.
#pragma once

#include "core/sheet/pass_view.h"

#include <QString>

namespace hammerline::words {

/// A dot within the zone, a triangle outside it (up: above), the zone as a band, numbers at the left edge. Empty where
/// fewer than three notes were read as numbers.
QString profileSvg(const PassView&, DimensionId, const Piano&);

} // namespace hammerline::words
