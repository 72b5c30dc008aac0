// The adjustment list as plain data: what a page says per note, in the order of work, before any words.
#pragma once

#include "core/sheet/sheet.h"

namespace hammerline {

/// One note's line. `now` is the reading it starts from, or what an earlier step is expected to make of it
/// (`afterStep`); `side` and `marks` say how far that lies outside its zone (-1 low, +1 high; look.md 2).
struct AdjustmentLine {
    const Step* step = nullptr;
    NoteNumber note;
    KeyColour colour{};
    std::size_t section = 0;
    std::optional<std::int64_t> now;
    std::optional<WordId> nowWord;
    std::optional<std::int64_t> read; // the newest one up to the plan's pass, as it was read
    int side = 0;                     // of the reading; of `now` where there is none
    int marks = 0;
    /// Where the plan starts from something else than the reading: more readings were weighed in, or earlier work.
    std::optional<std::int64_t> takenAs() const { return read && now != read ? now : std::nullopt; }
    std::optional<int> afterStep; // number of the earlier step on this list
    std::string_view handAmount;  // id of an amount of turns, only where learned
    std::optional<double> mm;     // amount of paper, card or pad, mm (this go)
    bool further = false;         // more goes follow
    bool ticked = false;          // said to be done, of this plan
};

/// One place of a common move: a bracket of the rest rail, a screw of the balance rail.
struct CommonPlace {
    NoteNumber at;
    double mm = 0;
};
struct SheetMove {
    const Step* step = nullptr;
    NoteRange range;
    std::vector<CommonPlace> places; // empty: one move without places
    std::optional<double> go;        // mm this go, when it is the same everywhere
    std::optional<double> whole;     // mm in all
    int goes = 1;
    struct Leads {
        DimensionId dimension;
        double change = 0; // mm, mean over its notes, by the response
    };
    std::vector<Leads> leadsTo;
};

/// All lines of one operation under one access heading.
struct AdjustmentWork {
    int number = 0; // on this list, from 1
    OperationId operation{};
    double minutes = 0;
    bool learned = false;
    std::optional<Effect> answer; // what this piano answers per unit, when learned
    std::optional<Effect> guess;  // else the first guess and its band
    double cap = 0;               // per go, turns or mm; 0 none
    std::string_view guard;
    const Trial* trial = nullptr; // first three notes, when nothing is learned
    std::vector<AdjustmentLine> lines;
    std::vector<SheetMove> moves;
    std::vector<Direction> directions; // that occur, each once
    bool opposite = false;             // this piano answers the other way round
};
struct AdjustmentVisit {
    Access access{};
    double minutesToGetThere = 0;
    std::vector<AdjustmentWork> works;
};

/// Notes left out for one fault of one part.
struct MendFirst {
    std::string part, fault;
    std::vector<NoteNumber> notes; // empty: the whole piano
};

struct AdjustmentSheet {
    std::vector<AdjustmentVisit> visits;
    std::vector<MendFirst> mendFirst;
    bool trialFirst = false; // some work has a trial
    std::size_t rows = 0;
    double minutes = 0; // access included
};

/// The plan must outlive the sheet. `view` is the pass that the plan follows.
AdjustmentSheet adjustmentSheet(const PianoRecord&, const PassView& view, const Plan&);

} // namespace hammerline
