// What other pianos of the same book, built alike and worked on by the same person, have taught of this one: first
// guesses in the place of the customary ones, until this piano has taught its own (core/experience reckons them).
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>

namespace hammerline {

struct TaughtFigure {
    int pianos = 0;
    double value{}, sd{};     // what is expected of the next piano, with its standard uncertainty
    double low95{}, high95{}; // where the next piano is to be expected
    friend bool operator==(const TaughtFigure&, const TaughtFigure&) = default;
};

/// Minutes that a step really took: their median, and the shortest and longest.
struct TaughtMinutes {
    int pianos = 0;
    double median{}, least{}, most{};
    friend bool operator==(const TaughtMinutes&, const TaughtMinutes&) = default;
};

/// Not part of the set-up, and never written to the book: whoever hands a piano over gathers it from the others.
struct Taught {
    std::map<std::string, TaughtFigure> answers;       // by operation: answer over the customary first guess
    std::array<std::optional<TaughtFigure>, 2> ratio;  // hammer travel : key travel, by KeyColour
    std::map<std::string, TaughtFigure> uncertainties; // of one reading, by dimension, trade units
    std::map<std::string, TaughtMinutes> minutes;      // by step of the work
    friend bool operator==(const Taught&, const Taught&) = default;
};

} // namespace hammerline
