// The slips of typing that explain a doubtful value (bench-practice 2.3, situation 61), each with what was meant.
#pragma once

#include "core/intake/cell.h"

namespace hammerline {

struct Slip {
    std::string_view id;    // "lost-zero"
    std::string suggestion; // as one would type it; empty: something is odd, but nothing explains it
};

/// The first slip whose suggestion is a sound reading of the cell; one without suggestion where only the writing is
/// odd (a fraction with mm, thousands or decimals, a denominator that is on no ruler). None: nothing explains it.
std::optional<Slip> likelySlip(std::string_view folded, const TypedQuantity&, Cell, const CellContext&);

/// 1,250 or 1.250 where the decimal mark is not settled.
bool groupingOpen(std::string_view folded, const TypedQuantity&, const CellContext&);
/// A fraction of an inch that no ruler shows: 1/6, where 1/16 was meant.
bool offTheRuler(std::string_view folded, const TypedQuantity&);

} // namespace hammerline
