// What is sold by the length or by the sheet, and what comes with what: screws with plates, two bushings with a pin,
// cloth and leather with the pieces that are cut from it.
#pragma once

#include "core/survey/survey.h"

namespace hammerline {

/// Cut from a strip that runs along the keyboard: a length, not pieces.
bool isStrip(std::string_view supply);

/// The lines that go with an order line: pieces by count, lengths in mm, sheets in cm2. A sheet is reckoned from the
/// size of one piece (Spares::cut, else customary) and a tenth for the edges, to the next 10 cm2.
std::vector<PartsLine> companionsOf(const PartsLine&, const Spares&);

} // namespace hammerline
