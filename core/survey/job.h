// The whole job before and around regulating: what to do in which order, hours by part, what is done, what waits.
#pragma once

#include "core/survey/remedy_minutes.h"
#include "core/survey/survey.h"
#include "core/survey/work_mark.h"

#include <set>

namespace hammerline {

/// What a workshop has settled for itself; everything else is customary.
struct JobTerms {
    Hand hand = Hand::practised;
    std::map<std::string, double> minutes; // by part, per unit, where other than customary by remedy
    Spares spares;
    std::set<std::string> inHand;  // supplies that have come; what needs others waits
    std::set<std::string> ordered; // supplies that are under way
};

/// The terms kept with a piano: minutes.PART, spare-percent, spare-at-least, only-these.PART, in-hand.SUPPLY,
/// ordered.SUPPLY, piece.SUPPLY (mm x mm, what is cut from a sheet), size.SUPPLY.FIELD and size.SUPPLY.FIELD@1-12 (as
/// parseSize takes them), hand, job (whole, or asked: what readings and findings ask for); odd-part.NAME and
/// work-done.PLACE.WHAT (as parseBeside takes them).
JobTerms jobTerms(const std::map<std::string, std::string>& preferences);

/// One of these, as it is typed: "minutes.butt-plate=8", "spare-percent=10", "in-hand.butt-plate=yes",
/// "piece.butt-leather=9.5x28", "size.centre-pin.diameter=1.27". Refuses usage, unknownPart.
Outcome<std::pair<std::string, std::string>> parseTerm(std::string_view);

/// Empty where the supply may be marked as ordered: it stands in the list, and what it is ordered by was measured
/// wherever it is needed. Else "unknown" or "size".
std::string_view whyNotOrdered(std::string_view supply, std::span<const PartsLine>);

/// One part in the order of the whole job.
struct JobLine {
    std::string_view part;
    JobStage stage{};
    std::vector<NoteNumber> toDo, watch, mended, notLookedAt;
    bool wholePiano = false; // said of the piano, not of notes
    bool wholeSet = false;
    bool first = false;             // something here blocks regulating
    bool waits = false;             // for parts that are not in hand
    std::set<std::string> waitsFor; // supplies
    bool specialist = false;        // referred, or no customary minutes
    double minutesOpen = 0, minutesDone = 0;
};
struct Job {
    std::vector<JobLine> lines; // with something to do, to watch or mended; by stage, then as in the catalogue
    double minutesOpen = 0, minutesDone = 0;
    double unforeseen = 0; // a tenth of the open minutes: what shows only once it is apart
    int blockedNotes = 0;
};
Job wholeJob(std::span<const Finding>, const Piano&, const JobTerms& = {});

/// What is asked before a plan is made, until the survey answers it: "try-let-off-screws" (three a section) and the
/// parts whose state decides whether readings mean anything (action-bolts, back-rail-cloth, player-stack, ...).
/// A step of the work that was ticked off as a whole answers what it put in order.
std::vector<std::string_view> askBeforePlan(std::span<const Finding>, const Piano&, std::span<const WorkMark> = {});
bool answeredByWork(std::string_view question, std::span<const WorkMark>);

/// The ends of every section: sample hammers to send with an order of new ones.
std::vector<NoteNumber> sampleHammers(const Piano&);

} // namespace hammerline
