// The catalogue of dimensions: what is measured per note. One row each; nothing switches over them elsewhere.
#pragma once

#include "core/piano/piano.h"

#include <span>
#include <string_view>

namespace hammerline {

/// Index of a row of the catalogue. Named constants exist for the rows that formulas speak of.
struct DimensionId {
    std::uint8_t row{};
    friend constexpr auto operator<=>(DimensionId, DimensionId) = default;
};

namespace dimension {
inline constexpr DimensionId keyHeight{0}, sharpHeight{1}, keyDip{2}, lostMotion{3}, blow{4}, letOff{5}, drop{6},
    aftertouch{7}, checking{8}, damperStart{9}, damperRise{10}, halfBlow{11}, strap{12}, playerClearance{13},
    capstanReserve{14}, downWeight{15}, upWeight{16}, sharpProud{17}, feltLeft{18};
// Said by words alone: how a part goes, stands or fits.
inline constexpr DimensionId jackReturn{19}, hammerReturn{20}, hammerTravel{21}, hammerSpace{22}, hammerSquare{23},
    stringFit{24}, jackPosition{25}, leverHeight{26}, repetitionSpring{27}, keyFit{28}, keySquare{29}, keySpace{30},
    damperLine{31}, damperSeat{32}, frameBed{33}, strikeLine{34};
} // namespace dimension
/// Rows of the catalogue, by its last id; the table is held to it where it stands.
inline constexpr std::size_t kDimensionCount = dimension::strikeLine.row + 1;

/// A word in place of a number, one key each.
struct WordId {
    std::uint8_t row{};
    friend constexpr auto operator<=>(WordId, WordId) = default;
};

namespace word {
inline constexpr WordId offRail{0}, blocks{1}, noLetOff{2}, doesNotCheck{3}, ok{4}, tight{5}, slack{6}, torn{7},
    early{8}, right{9}, late{10};
// Of the dimensions that are said by words alone; right is their word for a note that is well.
inline constexpr WordId slow{11}, staysOut{12}, stays{13}, driftsToBass{14}, driftsToTreble{15}, rubsNeighbour{16},
    towardBass{17}, towardTreble{18}, topLeansToBass{19}, topLeansToTreble{20}, bassStringOpen{21}, middleOpen{22},
    trebleOpen{23}, twoOpen{24}, tooDeep{25}, tooShallow{26}, leverHigh{27}, leverLow{28}, weak{29}, kicks{30},
    noSpring{31}, sticks{32}, loose{33}, leansToBass{34}, leansToTreble{35}, rubs{36}, earlyByPedal{37},
    lateByPedal{38}, oneStringRings{39}, leaks{40}, touchesNeighbour{41}, taps{42}, lifts{43}, tooNearTheEnd{44},
    tooFarFromTheEnd{45};
} // namespace word

struct Word {
    WordId id;
    std::string_view key; // off-rail
    /// Deviation it counts as: 0 within, 1.5 one mark, 2 two, 3 three; negative on the low side (to the bass, early,
    /// weak). Up to 1 it is said and counts as within.
    double marks;
    bool stopsNote; // blocks, no-let-off: first in every ranking
};

enum class MeasuredAt : std::uint8_t { keyFront, hammer, other };
enum class ReadWhere : std::uint8_t { everyNote, endsOfSections, endsOfRail };

/// Standard uncertainty of one reading with a kind of tool, in the dimension's smallest unit (bench-practice 2.4).
enum class Gauge : std::uint8_t { rule, simple, good };

struct Dimension {
    DimensionId id;
    std::string_view key;
    Kind kind;
    Unit entryUnit;                     // a bare number is this
    Shown shown;                        // what the hand can read
    std::int64_t refuseLow, refuseHigh; // outside: refused
    std::int64_t askLow, askHigh;       // outside: asked about (naturals' absolute height has a band of its own)
    std::array<std::int64_t, 3> u;      // by Gauge
    std::array<double, 2> seconds;      // a reading, practised and beginner
    MeasuredAt at;
    ReadWhere where;
    std::span<const WordId> words;
    std::span<const std::string_view> references; // first is the default; empty: none asked
    bool wordsOnly = false;                       // no number is taken; shown where it was asked for or read
};

std::span<const Dimension> dimensions();
const Dimension& row(DimensionId);
std::string_view key(DimensionId);
Outcome<DimensionId> findDimension(std::string_view key);

std::span<const Word> readingWords();
const Word& row(WordId);
/// By key ("off-rail"), or as typed ("off rail", "off", "does not check").
/// "returns|slow|stays-out": the words that may stand in its cells, as they are typed; empty where it has none.
std::string wordsAllowed(DimensionId);
Outcome<WordId> findWord(std::string_view typed, DimensionId);

/// Whether the note has this dimension at all (drop on a grand only, dampers to the last damper, sharp-height on
/// sharps, key-height on naturals, lost motion on verticals, player clearance where a stack is fitted).
bool fitted(DimensionId, NoteNumber, const Piano&);
bool fittedAnywhere(DimensionId, const Piano&);

/// Standard uncertainty for this piano's gauge of the dimension, smallest unit.
std::int64_t uncertaintyOf(DimensionId, const Piano&);

/// One dimension at one note.
struct Cell {
    NoteNumber note;
    DimensionId dimension;
    friend constexpr auto operator<=>(Cell, Cell) = default;
};

} // namespace hammerline
