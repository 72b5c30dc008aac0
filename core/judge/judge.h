// Verdicts, evenness, consistency and the ranking of one pass (computation 3, 4, 6).
#pragma once

#include "core/pass/pass.h"
#include "core/spec/spec.h"

namespace hammerline {

enum class Verdict : std::uint8_t { within, low, high, undecided, missing, notFitted };
std::string_view key(Verdict);

/// plain: limits decide, undecided only within min(u, 1/8 of the zone) beyond one. guard95, guardU: ISO 14253-1 with
/// guard band 1.65 u, or U = 2 u.
enum class Rule : std::uint8_t { plain, guard95, guardU };
std::string_view key(Rule);
Outcome<Rule> parseRule(std::string_view);

class PassTable;

/// Width of a zone; of a one-sided one twice its side; none where both sides are open.
std::optional<double> widthOf(const Zone&);

/// Deviation (x - nominal)/(limit on that side - nominal); `infinite` at a zero-width side; no value on an open side.
struct Deviation {
    std::optional<double> value;
    bool infinite = false;
};
Deviation deviationOf(std::int64_t x, const Zone&);

struct Judged {
    Cell cell;
    Verdict verdict = Verdict::missing;
    std::optional<double> deviation; // signed; words have theirs (+-2, -3)
    bool infinite = false;
    std::optional<std::int64_t> value; // in the reference of the review (relative height, sharp height)
    Relation relation = Relation::equal;
    std::optional<std::int64_t> upper;
    std::optional<WordId> word;
    double within = 0.0; // probability of conformity, for undecided ones
    bool uneven = false;
    bool step = false;     // beyond the step limit to a neighbour
    double unevenness = 0; // residual against the neighbours, smallest unit
    bool stale = false;
    bool overridden = false;
    /// 0 none, 1..3: |d| <= 1, <= 1.5, <= 2.5, beyond (look.md 2); sign by the verdict.
    int marks() const;
};

/// One reading alone; u is the standard uncertainty of its value, in the dimension's smallest unit. Words have their
/// own marks; an inequality or pair is judged where it decides, else undecided; without a zone nothing is asked:
/// within.
Judged judge(Cell, const Measured&, const std::optional<Zone>&, double u, Rule);

struct DoubtfulNote {
    NoteNumber note;
    /// "relation" (computation 6), "let-off-beyond-blow", "check-beyond-blow", "damper-start-beyond-blow",
    /// "check-inside-let-off", "drop-inside-let-off", "up-weight-beyond-down-weight"
    std::string_view why;
    DimensionId suspect;
    double residual = 0; // mm
};

struct Summary {
    int fitted = 0, within = 0, low = 0, high = 0, undecided = 0, missing = 0, notFitted = 0, uneven = 0, stale = 0;
    int outside() const { return low + high; }
};

struct Review {
    std::vector<DimensionId> asked;
    std::vector<Judged> ranked;        // every reading, worst first
    std::map<Cell, std::size_t> index; // into ranked
    std::map<Cell, Zone> zones;        // of the asked, fitted cells
    std::vector<DoubtfulNote> doubtful;
    std::vector<DimensionId> tooCoarse; // 2u >= zone width: this gauge cannot decide this zone
    Summary summary;
    std::map<DimensionId, Summary> byDimension;
    const Judged* at(Cell) const;
};

/// The pass in the references that zones speak in: absolute heights (datum bed or slip) become the distance from the
/// piano's own line for naturals and sharp-height for sharps, a drop from the string the drop below let-off; the typed
/// text stays (computation 2, 3, 9.1, 15). Heights against a line that hangs lose its sag at their place (situation
/// 11). What cannot be converted (no let-off read at the note, a height over another datum) is taken out. Doing
/// it twice changes nothing. (A damper start typed in per cent of the blow is stored in mm: core/intake.)
Pass withRelativeHeights(const Piano&, const Pass&);
/// Whether that changes anything.
bool needsConversion(const Pass&);

/// Judges every reading of the pass and ranks: words that stop the note, |d|, unevenness, note. `stale` cells are
/// marked.
Review review(const Piano&, const Pass&, const Zones&, Rule = Rule::plain, std::span<const Cell> stale = {});

/// Hammer travel : key-front travel of one colour (computation 6).
struct Ratio {
    double value{};
    double spread{};      // 1 sd between notes, the readings' uncertainty taken out; at least 1.2 %
    int notes{};          // 0: not from readings
    bool entered = false; // set by hand, which goes before readings
    double sd = 0;        // of the median itself, where it is from readings
    bool fromDefault() const { return notes == 0 && !entered; }
};
/// Median over the notes of the colour that have all five readings; at least three, else the default of the kind.
Ratio estimateRatio(const Piano&, const Pass&, KeyColour);
Ratio estimateRatio(const Piano&, const PassTable&, KeyColour);
/// Of several passes the one that told it by most notes, the newest of those: the ratio is the action's build, and a
/// pass that reads only what is doubtful does not unlearn it.
Ratio estimateRatio(const Piano&, std::span<const Pass>, KeyColour);

} // namespace hammerline
