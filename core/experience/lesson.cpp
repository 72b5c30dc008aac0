#include "core/experience/experience.h"
#include "core/experience/gauge_use.h"
#include "core/history/learned.h"
#include "core/judge/judge.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr int kFewestDegrees = 5;          // repeats that say something of a person's hand (a guess, no source)
constexpr double kLeastOfOneRatio = 0.005; // of itself: a ratio is never known better
constexpr double kSecondsInAMinute = 60;

PianoRecord withOneLine(PianoRecord record) {
    record.piano.taught = {};
    for (Pass& pass : record.passes)
        pass = withRelativeHeights(record.piano, pass);
    return record;
}

/// Which way a screw turns is its own piano's matter: only how much it answers is carried over. A trial that says
/// nothing yet counts with its uncertainty: left out, only the screws that answer most would teach.
void addAnswers(Lesson& lesson, const PianoRecord& relative, std::array<double, 2> ratio) {
    for (const TrialAnswer& trial : learn(relative, ratio).trials) {
        const bool counts = trial.says != TrialSays::otherWay && trial.says != TrialSays::doesNotAnswer;
        const double answer = trial.says == TrialSays::turned ? std::abs(trial.factor) : trial.factor;
        if (counts && trial.sd > 0) lesson.answers[trial.operation] = {answer, trial.sd};
    }
}

void addUncertainties(Lesson& lesson, const PianoRecord& record) {
    for (const GaugeUse& use : gaugeUse(record))
        if (use.degrees >= kFewestDegrees && use.seen > 0)
            lesson.uncertainties[use.dimension] = {std::log(use.seen), 1 / std::sqrt(2.0 * use.degrees)};
}

/// A step that a person ticked as a whole, with all the time that was said of it.
void addMinutes(Lesson& lesson, const PianoRecord& record) {
    std::map<std::string, std::int64_t> seconds;
    std::map<std::string, bool> done;
    for (const WorkMark& mark : record.marks) {
        seconds[mark.step] += mark.seconds;
        if (!mark.note) done[mark.step] = mark.state == MarkState::done;
    }
    for (const auto& [step, spent] : seconds)
        if (spent > 0 && done[step]) lesson.minutes[step] = static_cast<double>(spent) / kSecondsInAMinute;
}

} // namespace

Lesson lessonOf(const PianoRecord& record) {
    Lesson lesson;
    lesson.uuid = record.uuid;
    lesson.worker = std::string(identityValue(record.identity, "worker"));
    lesson.piano = record.piano;
    lesson.piano.taught = {};
    const PianoRecord relative = withOneLine(record);
    std::array<double, 2> values{};
    for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp}) {
        const auto c = static_cast<std::size_t>(colour);
        const Ratio ratio = estimateRatio(relative.piano, relative.passes, colour);
        values[c] = ratio.value;
        if (ratio.notes > 0)
            lesson.ratio[c] = CaseEstimate{ratio.value, std::max(ratio.sd, kLeastOfOneRatio * ratio.value)};
    }
    if (!record.done.empty()) addAnswers(lesson, relative, values);
    addUncertainties(lesson, relative);
    addMinutes(lesson, record);
    return lesson;
}

} // namespace hammerline
