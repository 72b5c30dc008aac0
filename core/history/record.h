// Everything known of one piano, as the book hands it over; what was done, and which readings it made stale.
#pragma once

#include "core/history/photo.h"
#include "core/operation/operation.h"
#include "core/pass/pass.h"
#include "core/spec/spec.h"
#include "core/survey/survey.h"
#include "core/survey/work_mark.h"

namespace hammerline {

/// One thing done, with the real amount (signed in the sense of the operation's row). Without an amount it means
/// "set to the aim": what follows teaches accuracy, not response.
struct Done {
    OperationId operation;
    std::vector<NoteNumber> notes; // the notes it touches (all of a piece for common ones)
    std::optional<double> amount;  // mm or turns; per note
    std::map<int, double> amounts; // by note, where they differ
    bool toAim = false;
    std::string plan; // uuid of the plan acted on, may be empty
    std::string step; // its step id
    int pass = 0;     // follows the readings of this pass
    std::int64_t order = 0;
    std::int64_t at = 0;
    std::optional<double> aim; // with toAim: what it was set to, where the step said so (trade units)
    friend bool operator==(const Done&, const Done&) = default;
};

/// A plan acted on, frozen with its first tick or print: options as text, steps and expected readings as stored.
struct FrozenPlan {
    std::string uuid;
    int pass = 0;
    std::string options; // JSON of PlanOptions (core/plan writes and reads it)
    std::string content; // JSON of steps and expected readings (core/plan writes and reads it)
    std::int64_t order = 0;
    friend bool operator==(const FrozenPlan&, const FrozenPlan&) = default;
};

/// The whole history of one piano. Pass numbers are places in `passes` from 1.
struct PianoRecord {
    std::string uuid;
    Piano piano;
    std::string specName;          // built-in name or the sheet's own
    std::optional<SpecSheet> spec; // an own or edited sheet; none: the built-in one of that name
    std::vector<Override> overrides;
    std::vector<Pass> passes;
    std::vector<Done> done;
    std::vector<Finding> findings; // current state per part and note, in order
    std::vector<Symptom> symptoms;
    std::vector<WorkMark> marks; // steps of the work ticked by hand, in order
    std::vector<FrozenPlan> plans;
    std::map<std::string, std::string> preferences; // units per dimension, minutes, ...
    Identity identity;                              // maker, owner ...; archived
    std::vector<Photo> photos;                      // likewise
    std::map<std::string, Picture> pictures;        // by hash; filled only where they are exported or were read back
    std::vector<Remark> remarks;                    // in the order in which they were said
    std::vector<std::string> leftOut;               // rows that cannot be true: KIND:NOTE:NAME (see unfit.h)

    const Pass* pass(int number) const;
};

/// Cells of the pass whose reading was followed by an operation (or a remedy) that disturbs its dimension at that note,
/// and lost motion read while its strap was too tight.
std::vector<Cell> staleCells(const PianoRecord&, const Pass&);

} // namespace hammerline
