// Moves of many notes at once, before any single note: the remedies of accepted causes, and the fit of the rest rail
// (computation 9.2, 14).
#pragma once

#include "core/plan/core_work.h"

namespace hammerline {

/// Takes the remedies of the causes on: common moves are carried out on the bench, cells that a cause answers for are
/// held back from single work. A cause is taken on by default where it is likely and has one answer; `accepted` names
/// another remedy, or "none".
void takeOnCauses(Bench&, CoreWork&);

/// Moves every piece of the rest rail whose hammers lie off, where that costs fewer minutes in all.
void fitRestRail(Bench&, CoreWork&);

/// While many naturals are deep, nothing is done to the sharps' keys: they are judged after (scenario S9).
void holdSharps(Bench&);

/// Moves all its notes on the bench.
void carryOut(Bench&, const CommonMove&);
/// Carries the moves out where they are wanted anyway, or cost fewer minutes in all than single work without them.
void carryOutWhereCheaper(Bench&, CoreWork&, std::span<const CommonMove>, bool wanted);

} // namespace hammerline
