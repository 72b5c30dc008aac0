// How the whole work stands on a piano and what comes next, from its record and the plan in force.
#pragma once

#include "core/history/record.h"
#include "core/plan/plan.h"
#include "core/work/next.h"

namespace hammerline {

struct WorkNow {
    std::vector<StepNow> steps;
    NextAct next;
    bool whole = true;  // the whole job, not only what readings and findings ask for
    double minutes = 0; // left
};
/// `plan`: the one in force; null where there is none.
WorkNow workNow(const PianoRecord&, const Plan*);
/// With the plan in force for the last pass, where a pass has readings.
WorkNow workNow(const PianoRecord&);

/// Whether the whole job is wanted: as `job` was said; else until half of the notes were read in some dimension, for
/// who reads them all means to regulate now.
bool wholeJobWanted(const PianoRecord&);

/// JSON of `work` and `next`; `sentence` as ui/words says it.
std::string workJson(const WorkNow&, const PianoRecord&, const std::string& sentence);
std::string nextJson(const WorkNow&, const std::string& sentence);

} // namespace hammerline
