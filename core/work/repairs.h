// What the survey found, gathered by the step of the work in which it is put right.
#pragma once

#include "core/work/standing.h"

namespace hammerline::work {

struct RepairsOfStep {
    std::vector<NoteNumber> toDo, mended;
    std::vector<std::string_view> parts; // of those to do
    std::set<std::string> missing;       // supplies not in hand
    bool allMissing = true;              // nothing of it can be done without them
    bool blocking = false;               // something must be mended before its note is regulated
    bool wholePiano = false;             // said of the piano, not of notes
    bool looked = true;                  // every place of its parts was looked at
    double minutes = 0;
    std::int64_t order = 0; // of the newest finding to do
};

/// By step; only those that have parts on this piano.
std::map<std::string_view, RepairsOfStep> repairsByStep(const WorkFacts&);
/// Share of the parts of this piano whose every place was looked at, 0 to 1.
double shareLookedAt(const WorkFacts&);

} // namespace hammerline::work
