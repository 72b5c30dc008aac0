// The survey in words, beyond what words.h gives everyone: supplies, remedies, stages, marks and sheet sizes.
#pragma once

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
/// What was found of a line: "85 of 85", or the notes where they are few.
QString foundText(const PartsLine&);
/// Where a mark is written: "on the bass side".
QString markPlaceName(MarkPlace);
/// "31 twice; 32 missing", or that all is in order.
QString markCheckSentence(const MarkCheck&);
/// The question that comes before a plan: "Try three let-off screws in every section: ..."
QString surveyQuestion(std::string_view id);
/// Why a part is not fitted here: "not on a brass flange rail". Empty: fitted.
QString notFittedReason(const Part&, const Piano&);
/// Minutes as hours: "2 h 10 min".
QString hours(double minutes);
/// What mending makes stale: "Blow, let-off and checking are stale after it."; empty: nothing.
QString staleSentence(const Part&, const Piano&);

} // namespace hammerline::words
