// Every code and id of core as a text for people: window, paper and command line say the same. Qt Core only.
// One file a subject; each domain's words stand in its own .cpp.
#pragma once

#include "core/comparison/comparison.h"
#include "core/intake/intake.h"
#include "core/plan/plan.h"
#include "ui/words/sign.h"

#include <QString>

namespace hammerline::words {

// refusals.cpp: what is wrong, where, what to do, what is still safe. One sentence each (or two short ones).
QString sentence(const Refusal&);
QString sentence(const Question&, const Piano&);
QString sentence(const RefusedRow&);

// readings.cpp
QString name(DimensionId);      // "Let-off"
QString shortName(DimensionId); // for narrow columns
QString name(WordId);           // "no let-off"
QString unitName(Unit);
QString unitName(Kind);
QString verdictName(Verdict);
/// low side / high side in the trade's words (look.md 8a): "nearer", "too far"...
QString sideName(DimensionId, bool high);
/// A value as it is shown: real minus, decimals of the dimension, no unit.
QString shown(DimensionId, std::int64_t count);
QString shown(DimensionId, const Reading&);
/// "Note 51, B4, let-off, 4.4 millimetres, too far, deviation plus 1.9"
QString cellSentence(const Judged&, const Piano&);
QString valueText(const Judged&);           // "4.4", "< 4.4", "4.0–4.4", "blocks": no unit
QString verdictText(const Judged&);         // "too far, uneven"
QString pitch(NoteNumber, const Piano&);    // with the sharp sign U+266F
QString noteName(NoteNumber, const Piano&); // "51 B4"
QString sectionName(const Section&, std::size_t index, std::size_t count);
QString zoneText(DimensionId, const Zone&);
QString actionName(ActionKind);
QString specName(std::string_view);
QString attributeName(std::string_view);
QString attributeValue(std::string_view attribute, std::string_view value);
QString referenceName(DimensionId, std::string_view reference);

// set_up_of_passes.cpp
QString notComparableSentence(DimensionId, std::string_view why);
QString benchSentence(const BenchSetUp&, const Piano&); // empty where nothing is to be said
QStringList passConditions(const Pass&, const Piano&);  // "stack out", "on the bench", "line sags 0.28 mm"

// operations.cpp
QString name(OperationId);
QString name(OperationId, const Piano&); // as this piano has it: a drop action turns buttons on wires
QString partName(OperationId);           // "let-off screw"
QString directionWord(Direction, OperationId, const Piano&);   // headline: OUT, UP, ADD; a drop button: CLOCKWISE
QString directionEffect(Direction, OperationId, const Piano&); // "nearer the string"
QString directionEffect(const Step&, const Piano&);            // as this piano answers
Sign signOf(OperationId, Direction, const Piano&);
/// "clockwise"
QString turnName(Turn);
/// "UP", "IN": where the turn of turnOf leads; empty where nothing is turned.
QString positiveName(OperationId, const Piano&);
/// "OUT = anticlockwise, seen from the screw's eye: nearer the string." One way, or both ways. `opposite`: the effect
/// of the other way, and that this piano has answered so.
QString directionSentence(OperationId, Direction, const Piano&, bool opposite = false);
QString directionSentence(OperationId, const Piano&);
QString aimText(const Step&); // "2.9", empty where there is no aim
/// "OUT, set to 2.9, nearer the string"
QString headline(const Step&, const Piano&);
QString amountWords(std::string_view handAmountId);
/// "0.08 + 0.13 mm", "at 1: 0.5 mm, at 44: 0.3 mm", "about 1/4, look"; empty where nothing is learned.
QString byHowMuch(const Step&, const Piano&);
/// "1/8", "1/4", "1/2"; other amounts in decimals.
QString turnText(double turns);
QString accessName(Access);
/// The same as it is said of this kind of action: a grand's is drawn out, a drop action's keys are unhooked.
QString accessName(Access, const Piano&);
QString stopSentence(std::string_view guard, const Piano&);
QString whySentence(std::string_view why);

// causes.cpp
QString causeName(std::string_view key);
QString causeSentence(const Cause&, const Piano&);
QString checkSentence(std::string_view check);
QString remedyName(std::string_view);
QString conflictSentence(const Conflict&, const Piano&);
QString symptomName(std::string_view);
QString symptomCheckName(std::string_view); // what is looked at for one: "a loose capstan"
QString sideEffectName(std::string_view);   // of its remedy: "dampers earlier"
QString adviceSentence(const Advice&, const Piano&);
QString gradeName(Grade);
QString missingForGradeSentence(std::string_view);
QString askFirstSentence(std::string_view, const Piano&);

// survey.cpp
QString partOfActionName(std::string_view part);
QString faultName(std::string_view fault);
QString surveyStateName(FindingState);
QString findingSentence(const Finding&, const Piano&);

// cautions.cpp: ids "tipping", "tension", "force", "solvents", "dust", "lead", "ivory", "mains", "springs", "specs"
QString caution(std::string_view id);
/// As it is meant of this piano; empty where it is not.
QString caution(std::string_view id, const Piano&);
std::vector<std::string_view> cautionsFor(const Piano&);

} // namespace hammerline::words
