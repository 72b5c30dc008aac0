// The survey in words, beyond what words.h gives everyone: supplies, remedies, stages, marks and sheet sizes.
#pragma once

#include "core/sheet/work_order.h"
#include "core/survey/job.h"
#include "core/survey/numbering.h"
#include "ui/words/words.h"

namespace hammerline::words {

/// What is ordered: "Bridle straps", "Centre pins".
QString supplyName(std::string_view supply);
/// "new plate", "replace set".
QString surveyRemedyName(std::string_view remedy);
QString jobStageName(JobStage);
/// "both bass strings", "50 naturals + 35 sharps"; empty where nothing grades.
QString supplySize(const PartsLine&);
/// "90", "1300 mm", "1 set".
QString supplyQuantity(const PartsLine&, int count);
/// The parts to order as a table of text (CSV).
std::string partsTable(const PianoRecord&);
/// What was found of a line: "85 of 85", or the notes where they are few.
QString foundText(const PartsLine&);
/// Where a mark is written: "on the bass side".
QString markPlaceName(MarkPlace);
/// "31 twice; 32 missing", or that all is in order.
QString markCheckSentence(const MarkCheck&);
/// The question that comes before a plan: "Try three let-off screws in every section: ..."
QString surveyQuestion(std::string_view id, const Piano&);
/// Why a part is not fitted here: "not on a brass flange rail". Empty: fitted.
QString notFittedReason(const Part&, const Piano&);
/// What is said where too many let-off screws do not turn.
QString letOffRailSentence();
/// The question's answer on the command line: "1-88 action-bolts sound".
QString surveyAnswer(std::string_view id, const Piano&);
/// As findingSentence, of several notes at once: "Notes 12, 23-24, 40, butt plate, screw: broken; new plate."
QString findingSentence(const Finding&, const std::vector<NoteNumber>&, const Piano&);
/// A step of the work order: "Order parts", "Action, on the bench".
QString workStepName(std::string_view id);
QString workStateName(WorkState);
/// What of it is open: "12 parts not looked at", "4 to do, waits for jack springs".
QString workStepText(const WorkOrderStep&);
/// What a setting of the job may be, after one that was none.
QString termUsage(std::string_view typed);
/// Minutes as hours: "2 h 10 min".
QString hours(double minutes);
/// What mending makes stale: "Blow, let-off and checking are stale after it."; empty: nothing.
QString staleSentence(const Part&, const Piano&);

} // namespace hammerline::words
