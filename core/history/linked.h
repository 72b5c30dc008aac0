// The arithmetic of one state with one covariance, for note_state.cpp.
#pragma once

#include "core/history/note_state.h"

namespace hammerline::linked {

/// Places in the covariance.
inline constexpr std::size_t kHeight = 0, kDip = 1, kLost = 2, kBlow = 3, kLetOff = 4, kOwnRatio = 5;

/// Where a dimension of that note stands in the covariance; none for one that hangs on nothing.
std::optional<std::size_t> placeOf(const NoteState&, DimensionId);

/// Those of dip, lost motion, blow and let-off that are not known; a grand's lost motion is known to be none.
std::vector<DimensionId> unknown(const NoteState&);
/// Whether the aftertouch is reckoned from the others.
bool reckoned(const NoteState&);

/// A = row x + constant at the state as it is known.
LinkedRow aftertouchRow(const NoteState&);
/// x += k (off from what the row says), V -= k row V, with k = V row'/(row V row' + variance).
void learn(NoteState&, const LinkedRow&, double off, double variance);
double varianceOf(const NoteState&, const LinkedRow&);
/// V += r r' variance.
void spread(NoteState&, const LinkedRow& r, double variance);
/// Known from now on by itself alone (0: not known).
void alone(NoteState&, std::size_t place, double variance);

/// Brings what is kept by dimension to what the covariance says, with the aftertouch reckoned anew. With one of the
/// four not known and an aftertouch that was read, the relation gives that one.
void settle(NoteState&);

} // namespace hammerline::linked
