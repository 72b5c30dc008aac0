// The plan's lines: from what is to be done to steps in the order of work, with go, caps, trials and minutes
// (computation 9.4, 9.5; bench-practice 2.5, 2.7, 2.8).
#pragma once

#include "core/plan/common_moves.h"
#include "core/plan/own_work.h"

namespace hammerline {

Step commonStep(const Bench&, const CommonMove&);
/// `way`: sign of the change that its reading needs.
Step noteStep(const Bench&, NoteNumber, const NoteTask&, double way);

/// Three notes for each screw that has to be turned and whose answer is not known: in bass, middle and treble, of those
/// that have farthest to go. Their steps carry the trial's amount.
std::vector<Trial> chooseTrials(const Bench&, std::vector<Step>&);

/// In the order of work, notes from the bass end; each step knows the earlier ones that move its reading.
void putInOrder(const Bench&, std::vector<Step>&);

/// Minutes of the steps and of getting there, once an access; from 21 keys on, all keys off once.
double minutesOf(const Bench&, std::span<const Step>);

/// What fits into the minutes: the notes whose work brings most outside readings in per minute, common moves first.
void keepWithin(const Bench&, std::vector<Step>&, double minutes);

} // namespace hammerline
