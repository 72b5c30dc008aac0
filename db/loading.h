// The whole history of a piano in a fixed number of statements, whatever its size.
#pragma once

#include "db/open_book.h"

namespace hammerline {

/// Every piano with its passes; `pianoNames` leaves the passes out.
std::vector<PianoLine> pianoLines(OpenBook&);
std::vector<PianoLine> pianoNames(OpenBook&);
PianoRecord loadPiano(OpenBook&, std::string_view uuid);
std::vector<Reading> readingTrail(OpenBook&, std::int64_t pass, Cell);

} // namespace hammerline
