// Gauge study: how much of the scatter is the gauge, how much the hands, how much the notes (computation 10).
#pragma once

#include <optional>
#include <vector>

namespace hammerline {

/// Readings of a balanced study: parts (notes) x persons x trials.
struct GaugeStudy {
    int parts{}, persons{}, trials{};
    std::vector<double> readings; // [(part * persons + person) * trials + trial]
    double at(int part, int person, int trial) const;
    /// At least two parts, one person, two trials, and as many readings as that makes.
    bool balanced() const;
};

/// Average and range (AIAG MSA, 4th edition). With the mean range of the repeats R, the range of the persons' means X
/// and the range of the parts' means Q:  EV = R/d2(trials),  AV = sqrt[(X/d2*(persons))^2 - EV^2/(parts trials)] (0
/// where negative or with one person),  GRR^2 = EV^2 + AV^2,  PV = Q/d2*(parts),  TV^2 = GRR^2 + PV^2.
struct AverageAndRange {
    double meanRange{}, personRange{}, partRange{};
    double repeatability{}, reproducibility{}, gauge{}, part{}, total{}; // EV, AV, GRR, PV, TV: standard deviations
    int distinctCategories{};                                            // whole part of 1.41 PV/GRR
    double gaugeShare() const { return total > 0 ? gauge / total : 0; }
};
/// None: not balanced, or more than ten parts, persons or trials (the constants end there).
std::optional<AverageAndRange> averageAndRange(const GaugeStudy&);

/// Two-way analysis of variance with interaction; variances of a component below zero count as 0.
struct VarianceAnalysis {
    struct Row {
        double degrees{}, squares{}, mean{};
    };
    Row part, person, interaction, repeat;
    double interactionP = 1;         // P(F >= observed); 1 with one person
    bool interactionDropped = false; // pooled with the repeats, as its p exceeds 0.25 (AIAG MSA, 4th edition)
    double repeatability{}, personDeviation{}, interactionDeviation{}, gauge{}, partDeviation{}, total{};
};
/// `pool`: drop an interaction whose p exceeds 0.25. None: not balanced.
std::optional<VarianceAnalysis> varianceAnalysis(const GaugeStudy&, bool pool = true);

/// Expected range of m standard normal values, and d2*(m, g) = sqrt(d2^2 + d3^2/g) for the mean range of g groups
/// (Duncan; AIAG MSA, appendix C). None outside 2..10.
std::optional<double> rangeFactor(int m);
std::optional<double> rangeFactor(int m, int groups);

/// 95 % of differences of two readings of one note lie under this: 1.96 sqrt(2) s (ISO 5725 says 2.8 s).
double repeatabilityLimit(double repeatability);

/// Standard uncertainty of one reading from its repeatability and the resolution of the scale: sqrt(s^2 + r^2/12).
double readingUncertainty(double repeatability, double resolution);

} // namespace hammerline
