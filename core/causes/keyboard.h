// A judged pass seen along the keyboard, as the rules of computation 14 ask it: one profile a dimension.
#pragma once

#include "core/causes/causes.h"

#include <span>

namespace hammerline {

/// One numeric reading in trade units (mm, g): what was read, how far from the nominal, and the zone around it.
struct ProfilePoint {
    int note{};
    double value{};
    double excess{};              // value - nominal
    double lowSide{}, highSide{}; // nominal - low, high - nominal; 0 where open
    bool outside = false;         // judged low or high
    bool clearly = false;         // outside by more than 2 u beyond the limit
};

struct KeyboardProfile {
    DimensionId dimension;
    std::vector<ProfilePoint> points; // by note
    int words = 0;                    // readings that are words
    double u = 0;                     // standard uncertainty of one reading

    bool empty() const { return points.empty(); }
    std::size_t size() const { return points.size(); }
    double halfZone() const; // median half width of the zones
    std::vector<double> values() const;
    std::vector<double> excesses() const;
};

/// The pass by dimension, with the piano and what went before.
struct Keyboard {
    const CauseInput* input{};
    std::map<DimensionId, KeyboardProfile> profiles; // the blow of a vertical is that of its rail
    std::array<double, 2> ratio;                     // R by KeyColour

    const Piano& piano() const { return input->record->piano; }
    const KeyboardProfile& of(DimensionId) const; // an empty one where nothing was read
    double ratioOf(int note) const;
    const KeyArms& armsOf(int note) const;
    /// Notes whose reading is this word.
    std::vector<int> notesWith(DimensionId, WordId) const;
    /// Every reading of the dimension at these notes (all where empty) that is outside.
    std::vector<Cell> outsideCells(std::span<const DimensionId>, std::span<const int> notes = {}) const;
};
Keyboard keyboardOf(const CauseInput&);
/// Whether this pass reads again only some of the notes that an earlier pass of the same method (a player's stack in or
/// out) read, two thirds or fewer: those are the doubtful ones, no sample of the keyboard, and a pattern in them is no
/// pattern. Such dimensions get no profile.
bool isReReading(const CauseInput&, DimensionId);

double medianOf(std::vector<double>);        // 0 for none
double spreadOf(const std::vector<double>&); // 1.4826 MAD, 0 for none
/// Running median over `window` neighbouring points.
std::vector<double> smoothed(const std::vector<double>&, std::size_t window);
double correlation(const std::vector<double>&, const std::vector<double>&);

/// A straight line through points by the median of pair slopes (robust against single odd notes): y = at + slope x.
struct StraightLine {
    double at{}, slope{};
    double operator()(double x) const { return at + slope * x; }
};
StraightLine robustLine(const std::vector<double>& x, const std::vector<double>& y);

/// Excesses of the points whose note lies in the range.
std::vector<double> excessesIn(const KeyboardProfile&, NoteRange);

} // namespace hammerline
