// The finish line: the grade of the piano as it is known by all passes, and when nothing more is worth its minutes.
#pragma once

#include "core/comparison/comparison.h"

namespace hammerline {

/// Plainly outside, as an expected number: the sum of the probabilities, with an upper bound of 95 % one-sided (sum of
/// independent yes and no with unequal chances: variance sum p (1 - p)).
struct ExpectedCount {
    int cells = 0;
    double outside = 0, variance = 0;
    void add(double probability);
    double atMost() const;
};

struct FinishLine {
    Grade grade = Grade::notYet;
    /// For the next better grade. For good: "nothing-read", "note-stopped" (blocks, no let-off, to be mended first),
    /// "too-many-outside", "notes-uneven", "let-off-not-known", "double-strike-reported". For even: "notes-outside",
    /// "notes-uneven", "notes-not-read".
    std::vector<std::string_view> missing;
    ExpectedCount all;
    std::map<DimensionId, ExpectedCount> byDimension;
    std::vector<Cell> uneven, odd; // more likely than not beyond two, three limits
    /// What the plan still asks for on the way to the next grade: readings, notes worked, minutes of both.
    int readings = 0, notes = 0;
    double minutes = 0;
    bool stop = false; // nothing asks for work, and no reading is worth its minutes
};

/// As the plan of least work for this pass begins. Nothing is known of a pass on a bench whose reference notes do not
/// agree yet: not-yet, without cells. Refuses noSuchPass.
Outcome<FinishLine> finishOf(const PianoRecord&, const SpecSheet&, int pass);

} // namespace hammerline
