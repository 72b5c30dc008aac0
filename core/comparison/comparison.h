// Pass against pass, and expected against achieved (computation 11).
#pragma once

#include "core/history/learning.h"
#include "core/judge/judge.h"

namespace hammerline {

enum class Grade : std::uint8_t { even, goodForThisPiano, notYet };
std::string_view key(Grade);

/// Before and now of a dimension, or of one section of it. Changes, spreads and steps in trade units (mm, g), over the
/// cells that hold a plain number in both passes; spreads and steps are of the distance from each note's own aim, so
/// that an aim that tapers or changes from section to section is no spread.
struct BeforeAndNow {
    int n = 0; // cells judged in both
    int outsideBefore = 0, outsideNow = 0, worseNow = 0;
    std::optional<double> medianChange, meanChange;
    std::optional<double> spreadBefore, spreadNow; // standard deviation
    std::optional<double> madBefore, madNow;       // median absolute deviation, not scaled
};

struct SectionComparison : BeforeAndNow {
    std::size_t section = 0; // index into sectionsOf
};

struct DimensionComparison : BeforeAndNow {
    DimensionId dimension;
    std::optional<double> ppk;                       // of the pass now, on the deviation scale
    std::optional<double> low95, high95;             // of the mean change, by paired t
    std::optional<double> achievedBias, achievedRms; // reading now less what was expected of the work
    std::optional<double> largestStep;               // between adjacent notes now
    std::vector<SectionComparison> sections;
};

struct ClimateRemark {
    double moistureBefore{}, moistureNow{}; // equilibrium moisture content of wood, per cent
    bool couldExplain = false;              // differs by more than 1
};

struct Comparison {
    int from = 0, to = 0;
    std::vector<DimensionComparison> dimensions;
    /// "reference", "stack", "weights", "bench", "bench-set-up": what was asked differently in the two passes.
    std::vector<std::pair<DimensionId, std::string_view>> notComparable;
    std::optional<ClimateRemark> climate;
    std::vector<Cell> gotWorse;
    std::vector<Response> learned;
};

Outcome<Comparison> comparePasses(const PianoRecord&, const SpecSheet&, int from, int to);

/// Whether somebody reported a hammer that strikes twice after that pass was read.
bool doubleStrikeReported(const PianoRecord&, int pass);

} // namespace hammerline
