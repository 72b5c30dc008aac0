// One cause behind many faults, and what symptoms point at (computation 14, bench-practice 5).
#pragma once

#include "core/history/record.h"
#include "core/judge/judge.h"

namespace hammerline {

struct Cause {
    std::string_view key; // sunk-balance-rail
    std::vector<NoteNumber> notes;
    std::string_view remedy;       // operation key or advice id
    std::optional<double> amount;  // mm or turns, signed in the operation's sense
    std::map<int, double> amounts; // by note where it tapers
    AmountUnit unit = AmountUnit::mm;
    /// The number that goes with the first, where one is not enough: the balance-rail shim beside a back-rail shim
    /// (low-key-backs), the most that the blow may grow (blow-too-short), mm.
    std::optional<double> beside;
    double certainty = 0;                 // 0..1, after the answered checks
    std::vector<std::string_view> checks; // deciding checks not answered yet, ids
    std::vector<Cell> explains;           // the cells it would replace
};

struct CauseInput {
    const PianoRecord* record{};
    const Pass* pass{}; // with relative heights
    const Review* review{};
};
/// The causes that fit the pass, the widest first. A cause that another one explains is left out; deciding checks that
/// the survey answers raise or rule out. Needs the record, the pass and its review; anything missing gives no cause.
std::vector<Cause> findCauses(const CauseInput&);

/// Advice on a symptom: checks in order, with what the readings say of each.
struct Advice {
    std::string symptom;
    NoteRange notes;
    struct Check {
        std::string_view id;           // "lost-motion", "damper-spring"
        std::optional<bool> supported; // by the readings; none: no reading decides
        std::vector<std::string_view> sideEffects;
        /// What the customary remedy adds to the aftertouch, mm at the key front (situations 36), where it is one.
        std::optional<double> aftertouchGain;
    };
    std::vector<Check> checks;
    bool noDimensionExplains = false;
};
std::vector<Advice> advise(const CauseInput&);

} // namespace hammerline
