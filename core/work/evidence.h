// What in a book tells that a step of the work is done, or asks for it: parts of the survey and dimensions.
#pragma once

#include "core/work/work.h"

namespace hammerline {

/// What a step puts right. A part written "hammer-head/reshape" is meant with that remedy alone.
struct StepEvidence {
    std::string_view step;
    std::vector<std::string_view> parts;
    std::vector<DimensionId> dimensions;
    bool sampled = false; // a few readings tell enough (a rail, a rod), not one at every note
};

/// Null: nothing but a tick tells.
const StepEvidence* evidenceOf(std::string_view step);

/// The step of this piano in which a finding is put right; null where it has none.
const StepOfWork* stepOf(const Finding&, const Piano&);
/// The step of this piano that a line of the plan belongs to: an operation at a note (none: of the whole piano).
const StepOfWork* stepOf(OperationId, std::optional<NoteNumber>, const Piano&);
/// The dimension's notes that a step is for: the sharps, the naturals or all that have it.
std::vector<NoteNumber> notesOf(const StepOfWork&, DimensionId, const Piano&);

} // namespace hammerline
