// One shop and its pianos, one after the other: what the first ones taught is the first guess of the next.
#pragma once

#include "tests/virtual_action/players.h"

namespace virtual_action {

/// Answers in mm a turn, without sign.
struct FirstGuess {
    hammerline::OperationId operation;
    double truth = 0; // of this piano, by the hidden levers and pitches
    double guess = 0; // before its own trial
    double sd = 0;    // as the guess says of itself
    double low = 0, high = 0;
    double learned = 0; // after a trial of three notes (let-off; else 0)
    double learnedSd = 0;
    bool number = false; // and whether that allows a number of turns
    double error() const { return std::abs(guess - truth) / truth; }
    double errorOfTrial() const { return std::abs(learned - truth) / truth; }
};

struct ShopPiano {
    std::vector<FirstGuess> guesses;
    Played played;
};

/// What is done on each: a trial of three let-off screws, or the whole job by the program.
enum class Work : std::uint8_t { trialsAlone, wholeJob };

struct Shop {
    int pianos = 30;
    Work work = Work::trialsAlone;
    std::uint64_t firstSeed = 1;
    std::uint64_t make = 0; // as Wear::make
};
/// Worn uprights built alike, read with simple gauges. `taught`: each by those before it.
std::vector<ShopPiano> workThrough(const Shop&, bool taught);

} // namespace virtual_action
