// The whole history of a piano in a fixed number of statements, whatever its size.
#pragma once

#include "db/open_book.h"

namespace hammerline {

/// Every piano with its passes; `pianoNames` leaves the passes out.
std::vector<PianoLine> pianoLines(OpenBook&);
std::vector<PianoLine> pianoNames(OpenBook&);
PianoRecord loadPiano(OpenBook&, std::string_view uuid);
/// Other pianos of that kind: those on which something was done or timed before those that were only read, the last
/// first, at most so many.
std::vector<std::string> pianosThatTeach(OpenBook&, ActionKind, std::string_view except, std::size_t most);
std::vector<Reading> readingTrail(OpenBook&, std::int64_t pass, Cell);

} // namespace hammerline
