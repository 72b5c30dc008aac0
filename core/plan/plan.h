// The adjustment plan: which part, which way, set to what, in an order in which later steps do not undo earlier ones
// (computation 9, 9a; bench-practice 2.5, 2.7, 2.8). A pure function of its input.
#pragma once

#include "core/causes/causes.h"
#include "core/comparison/bench_set_up.h"
#include "core/history/learning.h"
#include "core/judge/judge.h"
#include "core/plan/finish_line.h"

#include <deque>
#include <memory>

namespace hammerline {

enum class Intent : std::uint8_t { touchUp, full };
enum class Float : std::uint8_t { dip, blow, aftertouch };
enum class Stage : std::uint8_t { trial, sections, whole };
std::string_view key(Intent);
std::string_view key(Float);
std::string_view key(Stage);

struct PlanOptions {
    Intent intent = Intent::touchUp;
    Float floating = Float::aftertouch;
    std::optional<double> minutes;
    std::map<std::string, std::string> accepted; // cause -> remedy ("" = its only one)
    Stage stage = Stage::whole;
    Rule rule = Rule::plain;
    friend bool operator==(const PlanOptions&, const PlanOptions&) = default;
};

/// Aims are in trade units of `aimDimension` (mm). Amounts are signed in the sense of the operation's row; absent where
/// nothing is learned (or nothing can be said).
struct Step {
    std::string id; // let-off-turn:33, rest-rail-shim:1-44; the same for the same options
    int order = 0;
    Access access{};
    OperationId operation{};
    std::optional<NoteNumber> note; // none for common ones
    std::vector<NoteNumber> notes;
    std::vector<DimensionId> serves;
    Direction direction{};
    std::optional<bool> positive; // in the sense of the row; empty only in plans kept before they said it
    bool opposite = false; // this piano answers the other way round: the direction has the effect of the other one
    std::optional<double> aim;
    DimensionId aimDimension{};
    std::optional<std::int64_t> now; // the reading it starts from, smallest unit
    std::optional<WordId> nowWord;
    std::optional<double> amount;
    std::optional<double> go;
    std::map<int, double> amounts;
    std::optional<double> atPart; // mm at the part from the geometry; never printed for screws
    AmountUnit unit = AmountUnit::none;
    std::string_view stopIf; // guard id
    std::string why;         // machine text: verdict or cause key
    double minutes = 0;
    std::vector<std::string> after; // ids of earlier steps that move its reading
    std::vector<Length> stack;      // punchings to add, from the stock
};

struct Expected {
    Cell cell;
    double value{}, low95{}, high95{};
    Verdict verdict{};
};
struct ToRead {
    Cell cell;
    std::string_view why;
};
/// Why of a lost motion that is only looked at: does the hammer lie on its rail? "ok" or "off-rail", no number.
inline constexpr std::string_view kLookAtRail = "on-its-rail";
/// Why of a cell that a cause answers for: the cause is looked at first.
inline constexpr std::string_view kHeldBack = "held-back";
/// What one of them takes: a look some 4 seconds (common practice, no source), else what the dimension takes.
double minutesOf(const ToRead&);

struct Conflict {
    NoteNumber note;
    std::string_view what; // id of the sentence
    double needsDip = 0, keyGives = 0, aftertouchAtLeast = 0;
    double raiseKey = 0, shortenBlow = 0, aftertouchThen = 0; // the three ways out, mm
};
struct BlockedNote {
    NoteNumber note;
    Finding finding;
};
struct Trial {
    OperationId operation;
    std::vector<NoteNumber> notes;
    double amount{};
    Direction direction{};
};

struct Plan {
    std::string uuid; // of the frozen plan, empty while it is only thought
    int pass = 0;
    PlanOptions options;
    std::array<Ratio, 2> ratio;
    std::vector<Response> responses;
    std::vector<Cause> causes;
    std::vector<Step> steps; // in order of work
    std::vector<Expected> expected;
    std::vector<ToRead> readNext;
    std::vector<Conflict> conflicts;
    std::vector<BlockedNote> blocked;
    std::vector<Trial> trials;
    std::vector<Cell> becomesStale;
    std::vector<std::string_view> askFirst; // questions before a plan is made: "try-let-off-screws", "action-bolts"
    std::optional<FinishLine> finish;       // as it stands before the steps; none in a plan that was kept
    BenchSetUp setUp; // where it waits, there are no steps: the readings may be the bench's and not the piano's
    double minutes = 0;
    std::shared_ptr<const std::deque<std::string>> texts; // what the ids of a plan that was read from text point at
};

/// Refuses noSuchPass. An empty plan is a plan without steps, not a refusal.
Outcome<Plan> makePlan(const PianoRecord&, const SpecSheet&, int pass, const PlanOptions&);

/// A plan as text and back (frozen plans). Refuses badJson.
std::string writePlan(const Plan&);
Outcome<Plan> readPlan(std::string_view json);
std::string writeOptions(const PlanOptions&);
Outcome<PlanOptions> readOptions(std::string_view json);

/// Punchings from a stock for a target thickness (computation 9a). Counts limited where `counts` has an entry.
struct ShimStack {
    std::vector<Length> pieces; // largest first
    Length error;               // sum - target
};
ShimStack shimStack(Length target, std::span<const Length> stock, std::span<const int> counts = {}, int mostPieces = 6);

/// A hand's words for a learned amount of turns: "touch", "under-1/8", "about-1/8", "under-1/4", "about-1/4",
/// "1/4-look",
/// ... (ids; ui/words says them). Never beyond the cap per go.
std::string_view handAmount(double turns, double cap);

} // namespace hammerline
