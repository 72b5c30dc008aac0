#include "core/plan/trials_said.h"

#include "core/history/learned.h"
#include "core/judge/judge.h"

namespace hammerline {

std::vector<TrialAnswer> trialsSaid(const PianoRecord& record) {
    if (record.done.empty()) return {};
    PianoRecord relative = record; // one line for all heights
    for (Pass& pass : relative.passes)
        pass = withRelativeHeights(record.piano, pass);
    const std::array ratio = {estimateRatio(record.piano, relative.passes, KeyColour::natural).value,
                              estimateRatio(record.piano, relative.passes, KeyColour::sharp).value};
    return learn(relative, ratio).trials;
}

} // namespace hammerline
