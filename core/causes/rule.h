// A rule of computation 14 as a row: pattern, remedy, deciding checks, what it replaces, how sure.
#pragma once

#include "core/causes/keyboard.h"

namespace hammerline {

/// What a pattern found: the notes and the amounts; the row adds the rest.
struct Match {
    std::vector<int> notes;
    std::optional<double> amount;
    std::map<int, double> amounts;
    std::optional<double> beside;
    std::string_view remedy;       // overrides the row's, where the pattern chooses
    std::vector<DimensionId> only; // what it explains here, where the pattern says so; else the row's dimensions
    double certainty = 0;          // overrides the row's, where above 0
};

using Pattern = std::vector<Match> (*)(const Keyboard&);

/// A check that decides for or against a cause: a part of the survey to look at, or a look at this pass that is
/// answered by yes or no, and what it means.
struct DecidingCheck {
    std::string_view id;
    std::string_view part; // of the survey; empty: a look, or an instruction
    bool speaksFor;        // the fault, or "yes"; false: a fault there explains the pattern instead, "no" speaks for it
};

struct CauseRule {
    std::string_view key;
    Pattern pattern;
    std::string_view remedy;
    std::span<const DecidingCheck> checks;
    std::span<const DimensionId> explains;
    std::span<const std::string_view> yieldsTo; // left out where one of these was found
    std::size_t leastExplained;                 // cells outside that it must explain to be worth saying
    double certainty;
};

std::span<const CauseRule> causeRules();

/// Weighs the answered checks: nothing where they rule the cause out; else its certainty and the open checks.
struct Weighed {
    double certainty{};
    std::vector<std::string_view> open;
};
std::optional<Weighed> weigh(double certainty, std::span<const DecidingCheck>, const PianoRecord&, const Pass&);

// --- patterns, by the part of the instrument they speak of
std::vector<Match> sunkBalanceRail(const Keyboard&);
std::vector<Match> crushedBalanceFelts(const Keyboard&);
std::vector<Match> thickBackCloth(const Keyboard&);
std::vector<Match> packedCloths(const Keyboard&);
std::vector<Match> lowKeyBacks(const Keyboard&);
std::vector<Match> movedWood(const Keyboard&);
std::vector<Match> hammersFiled(const Keyboard&);
std::vector<Match> crushedRestCushions(const Keyboard&);
std::vector<Match> railEndOrPiece(const Keyboard&);
std::vector<Match> blowTooShort(const Keyboard&);
std::vector<Match> jackCannotEscape(const Keyboard&);
std::vector<Match> looseLetOffRail(const Keyboard&);
std::vector<Match> checksAfterDip(const Keyboard&);
std::vector<Match> isolatedPart(const Keyboard&);
std::vector<Match> sectionBlock(const Keyboard&);
std::vector<Match> looseCapstan(const Keyboard&);
std::vector<Match> unstableRest(const Keyboard&);
std::vector<Match> fingerHoldsWippen(const Keyboard&);
std::vector<Match> nothingMeasurable(const Keyboard&);

} // namespace hammerline
