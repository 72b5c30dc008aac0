// Foreign text -> readings, questions and refusals: single cells, files and the clipboard (computation 2, situations
// 59-73). No file is opened here.
#pragma once

#include "core/pass/pass.h"

#include <functional>

namespace hammerline {

/// Why a value is asked about or refused; the ids are those of the import JSON.
enum class Doubt : std::uint8_t {
    none,
    unreadable,
    outOfRange,
    likelySlip,
    date,
    duplicate,
    unknownNote,
    unitMismatch,
    unknownColumn
};
std::string_view key(Doubt);

/// A reading that is not stored until a person says so. `mayTake`: it may be taken as typed (false: only the
/// suggestion).
struct Question {
    Place place;
    std::optional<Cell> cell;
    std::string text;
    Doubt doubt = Doubt::none;
    std::string slip; // "inch-for-mm", "lost-zero", "lost-mark", "date-from-fraction", "off-rail", "negative-gap" ...
    std::optional<Reading> asTyped; // what it would be
    bool mayTake = true;
    std::string suggestion; // as one would type it ("1 13/16 in"), empty: none
    std::string pass;       // long form only
};

/// What is known around a single cell when it is typed.
struct EntryContext {
    const Piano* piano{};
    const Pass* pass{};                // for cross checks (let-off against blow); may be null
    std::optional<Unit> unit;          // overrides the dimension's entry unit
    std::map<DimensionId, Unit> units; // units chosen per dimension
};

/// A repeat of a cell that was read in another unit, or that lies farther from the trials before it than two readings
/// of one thing do (four times the gauge's uncertainty): asked about before it is taken. None where nothing is wrong.
std::optional<Question> askAboutRepeat(Cell, const Reading&, const Measured& before, const Piano&);

/// One typed cell: a sound reading, a question, or a refusal.
struct Entry {
    std::optional<Reading> sound;
    std::optional<Question> question;
    // an absolute key height (40 to 100 mm): storing it, set the pass's reference of key-height to "bed"
    bool fromBed = false;
};
/// Refuses what cannot be meant: unreadable, twoDecimalMarks, zeroDenominator, unknownWord, wrongUnit (also a share of
/// a blow that is not known), outOfRange where no slip explains it (detail: the range, "0..20 mm"), notFitted,
/// upNotBelowDown.
Outcome<Entry> readEntry(std::string_view typed, Cell, const EntryContext&);

/// A key height of 40 to 100 mm is measured from the key bed (computation 2).
bool isFromBed(DimensionId, std::int64_t count);

struct Dialect {
    std::string encoding = "UTF-8"; // UTF-8, UTF-8-BOM, UTF-16LE, UTF-16BE, Windows-1252
    char separator = ',';
    char decimal = '.';
    bool decimalSeen = false; // some number, or the person, said so; otherwise 1,250 is asked about
    bool header = true;
};

struct TableOptions {
    std::map<std::string, DimensionId> columns; // header text -> dimension, by hand
    std::map<DimensionId, Unit> units;
    std::optional<char> separator;
    std::optional<char> decimal;
    std::map<DimensionId, std::string> references; // of the pass it goes to
    bool datumHolds = false; // the pass has key heights, or says what they are counted from: others are asked about
};

/// Text as rows of fields, with the line each row starts in (from 1). RFC 4180 plus the dialects of spreadsheets.
struct Table {
    Dialect dialect;
    std::vector<std::vector<std::string>> rows;
    std::vector<int> lines;
};
/// Refuses emptyFile, badTable (unterminated quote, NUL byte, text after a quote) with line and column.
Outcome<Table> readTable(std::string_view bytes, const TableOptions& = {});

struct ColumnUse {
    std::string header;
    enum class Use : std::uint8_t { note, dimension, ignored, ambiguous } use = Use::ignored;
    std::optional<DimensionId> dimension;
    std::optional<Unit> unit;
};

struct Sound {
    Cell cell;
    Reading reading;
    int line{};
    std::string pass; // long form only: pass label or number as text
};

/// Long form only: a person said that this note has not got the dimension.
struct SaidNotFitted {
    Cell cell;
    int line{};
    std::string pass;
};

/// Long form only: a pass of the file without readings keeps its place among the others. Its name is the number or
/// label by which the rows of readings would name it.
struct SaidPass {
    std::string name;
    int line{};
    std::string label; // empty: none of its own
};

struct RefusedRow {
    int line{};
    int column{};
    std::string note;
    std::optional<DimensionId> dimension;
    std::string text;
    Doubt kind = Doubt::unreadable;
    RefusalCode code = RefusalCode::unreadable;
};

struct Intake {
    Dialect dialect;
    std::vector<ColumnUse> columns;
    std::vector<Sound> sound;
    std::vector<Question> questions;
    std::vector<RefusedRow> refused;
    std::vector<std::string> ignoredColumns;
    std::map<DimensionId, std::string> references; // found out: key-height=bed
    bool longForm = false;                         // piano;pass;note;dimension;trial;text;unit;state;at
    std::vector<SaidNotFitted> notFitted;
    std::vector<SaidPass> passes; // without readings; not those that were given away while reading
};

/// More than a person looks through, or a file of readings has; what is beyond is refused as a whole.
inline constexpr std::size_t kMostAsked = 10'000;     // questions and refused rows: "too-many-asked"
inline constexpr std::size_t kMostCells = 200'000;    // of a table, or said to be not fitted: "too-many-cells"
inline constexpr std::size_t kMostPasses = 1'000;     // named by one file: "too-many-passes"
inline constexpr std::size_t kMostWhole = 8ULL << 20; // bytes of what is not read in pieces: tooLarge

/// A whole file or clipboard. Refuses tooLarge, what readTable refuses, and badTable when no column names a note
/// ("note-column") or a dimension ("dimension-column").
Outcome<Intake> readReadings(std::string_view bytes, const Piano&, const TableOptions& = {});

/// The long form, each sound reading given away as it is read; `Intake::sound` stays empty. Rows of the piano's own
/// name are taken and each other piano refused once (noSuchPiano); a file that does not know the name must be of one
/// piano (severalPianos). A second, differing reading of a cell and trial is asked about. A file in pieces:
/// long_form.h.
Outcome<Intake> readLongForm(std::string_view bytes, const Piano&, const std::function<void(Sound&&)>& take,
                             const TableOptions& = {});
/// Whether the first line names the columns of the long form.
bool isLongForm(std::string_view bytes);

/// The dimension a header word means, in several languages ("Tiefgang", "set-off", "touch depth (in)").
struct HeaderMeaning {
    ColumnUse::Use use;
    std::optional<DimensionId> dimension;
    std::optional<Unit> unit;
};
HeaderMeaning headerMeaning(std::string_view header);

} // namespace hammerline
