// How the steps of the work stand, and the one sentence that says what comes next.
#pragma once

#include "core/sheet/work_now.h"

#include <QString>

namespace hammerline::words {

QString stepName(std::string_view id);
/// "Take the keys off: customary 10 min; really 27 min, median of 4 pianos (20 to 60)."
QString tookSentence(std::string_view step, double customary, const TaughtMinutes&);
QString stepStateName(StepState);
/// Why a step is not needed, or done without a tick; the remark of a person where one was typed.
QString stepReason(const StepNow&);
/// What is left of a step: notes, lines, parts, what it waits for; empty where its name says enough.
QString stepLeft(const StepNow&, const Piano&);
/// "Next: ..."
QString nextSentence(const NextAct&, const Piano&);
/// Where there is no piano yet.
QString nextWithoutPiano();
/// The parts of the work: "Before anything is moved".
QString workPartName(WorkPart);
/// Sentences of what a step is for, how it is done, when it is good, with their headings, in reading order.
struct StepParagraph {
    QString heading, text;
};
std::vector<StepParagraph> stepParagraphs(const StepOfWork&, const Piano&);

} // namespace hammerline::words
