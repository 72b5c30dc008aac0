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

/// How a deciding check is answered: as the state of a part of the survey, by yes or no for the pass it was looked at
/// in, or, where it is neither, not at all: it tells what to do.
struct CheckQuestion {
    std::string_view part;
    bool yesOrNo = false;
};
std::optional<CheckQuestion> checkQuestion(std::string_view id); // none: no check of a cause
/// What has been answered: whether the part is faulty, whether the look said yes.
std::optional<bool> answerTo(std::string_view id, const PianoRecord&, const Pass&);
/// "mark-capstan yes" as it is kept with the piano. Refuses unknownLook.
Outcome<std::pair<std::string, std::string>> parseLook(std::string_view, const Pass&);

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
