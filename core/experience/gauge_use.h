// How well each dimension is read: from the repeats in the book and, where several persons read the same notes, the
// gauge study.
#pragma once

#include "core/history/record.h"
#include "core/stats/gauge_study.h"

namespace hammerline {

/// Trade units. Repeats are readings of one cell in one pass (the same hands, nothing done between them).
struct GaugeUse {
    DimensionId dimension;
    int readings = 0;         // that are repeats of one another
    double repeatability = 0; // their standard deviation, pooled over the cells; degrees of freedom below
    int degrees = 0;
    double told = 0;       // standard uncertainty that the set-up's gauge is taken to have
    double seen = 0;       // of one reading by these repeats: sqrt(s^2 + resolution^2/12)
    double difference = 0; // 95 % of differences of two readings of one note lie under it
    /// Of notes that all the persons read equally often, at least twice. Up to ten of each by average and range, else
    /// by analysis of variance (AIAG MSA, 4th edition).
    struct Study {
        int notes = 0, persons = 0, trials = 0;
        bool byRange = false;
        double repeatability = 0, reproducibility = 0, gauge = 0, notesDiffer = 0, total = 0;
        int distinct = 0; // notes that the gauge tells apart: whole part of 1.41 times notes over gauge
    };
    std::optional<Study> study = {};
};

/// `persons`: pass numbers, each another person's readings of the same state; empty: repeats alone. Dimensions without
/// repeats are left out. Where something was done between these passes, the cells that it disturbed are left out.
std::vector<GaugeUse> gaugeUse(const PianoRecord&, std::span<const int> persons = {});

} // namespace hammerline
