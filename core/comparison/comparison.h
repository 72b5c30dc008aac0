// Pass against pass, and expected against achieved (computation 11).
#pragma once

#include "core/history/learning.h"
#include "core/judge/judge.h"

namespace hammerline {

enum class Grade : std::uint8_t { even, goodForThisPiano, notYet };
std::string_view key(Grade);

struct DimensionComparison {
    DimensionId dimension;
    int n = 0; // cells read in both
    int outsideBefore = 0, outsideNow = 0, worseNow = 0;
    std::optional<double> medianChange, spreadBefore, spreadNow, ppk, meanChange, low95, high95, achievedBias,
        achievedRms;
    std::optional<double> largestStep;
};

struct ClimateRemark {
    double moistureBefore{}, moistureNow{}; // equilibrium moisture content of wood, per cent
    bool couldExplain = false;              // differs by more than 1
};

struct Comparison {
    int from = 0, to = 0;
    std::vector<DimensionComparison> dimensions;
    std::vector<std::pair<DimensionId, std::string_view>> notComparable; // another reference, method, stack, weights
    std::optional<ClimateRemark> climate;
    std::vector<Cell> gotWorse;
    Grade grade = Grade::notYet;
    std::vector<std::string_view> missingForGrade;
    std::vector<Response> learned;
};

/// `from` may equal `to`: the grade of one pass alone.
Outcome<Comparison> comparePasses(const PianoRecord&, const SpecSheet&, int from, int to);

/// Grade of one pass by its review (computation 11).
std::pair<Grade, std::vector<std::string_view>> gradeOf(const PianoRecord&, const Review&, int pass);

} // namespace hammerline
