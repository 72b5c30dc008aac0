// Settling: what new punchings, felts, cloths and straps are expected to take, as a band for each reading they move,
// and when to come back and read. A forecast only: nothing here changes a reading, an aim or a plan.
#pragma once

#include "core/history/record.h"

namespace hammerline {

/// What settles, one row a part of the survey. It loses share x thickness; the band runs from the least of both to the
/// most. `direct`: mm of the reading for each mm lost, from first to last of its band; empty: the key lever (or the
/// rest rail) tells, as for `like`, an operation that takes the same away.
struct SettlingRow {
    std::string_view part;
    std::array<double, 2> thickness; // mm, new, customary
    std::array<double, 2> share;     // of the thickness, over the months
    std::optional<OperationId> like;
    std::array<DimensionId, 2> direct; // at most two, the second repeats the first where there is one
    std::array<double, 2> perMm;
    std::string_view source;
};
std::span<const SettlingRow> settlingRows();
inline constexpr int kSettledMonths = 6;   // by then most of it is done: the source of the punchings
inline constexpr int kFirstVisitWeeks = 6; // 4 to 8; common practice, no source

/// Change of a reading until it has settled, trade unit (mm). `least` lies nearer to nothing, `most` farther off; a
/// reading of words (straps) and one that follows too loosely (checking) have no figures.
struct SettlingBand {
    DimensionId dimension{};
    std::optional<KeyColour> keys; // where naturals and sharps differ
    std::optional<double> least, most;
};

/// One part renewed on one day, at its notes.
struct Settling {
    const SettlingRow* row = nullptr;
    std::vector<NoteNumber> notes;
    std::int64_t renewedAt = 0; // microseconds since 1970 UTC; 0: not known
    std::string firstVisit;     // YYYY-MM-DD, empty where the day is not known
    std::string settledBy;      // likewise
    std::vector<SettlingBand> bands;
};

/// Newly fitted parts of the survey that stand as mended, by row and day. A part mended in place (glued, eased) does
/// not settle.
std::vector<Settling> settlingOf(const PianoRecord&);
/// The same of one note alone.
std::vector<Settling> settlingAt(const PianoRecord&, NoteNumber);

/// What to read at a visit: the cells that settling moves, and their sum over all that settles at a note. A cell that
/// nothing moves by a figure (straps) is named without one.
struct SettlingCell {
    Cell cell;
    std::optional<double> low, high; // mm, with sign; of several together the plain sums of their ends
};
/// In order of note and dimension.
std::vector<SettlingCell> settlingCells(const PianoRecord&);

/// The kept choice of a piano that has the measuring ask for these cells alone, and its value.
inline constexpr std::string_view kEntryOrderPreference = "entry-order", kAskWhatSettles = "settled";

/// The next days to come back over everything that settles: the earliest first visit and the last day of all; empty
/// where nothing settles.
struct SettlingVisits {
    std::string first, last;
};
SettlingVisits settlingVisits(std::span<const Settling>);

/// YYYY-MM-DD (UTC) of a time and so many days or months on; the last day of a month where the next has no such day.
std::string dayAfter(std::int64_t microseconds, int days, int months);

} // namespace hammerline
