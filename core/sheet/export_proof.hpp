// What proves that a piano of an export is as it was written.
#pragma once

#include "core/sheet/export_reading.h"
#include "core/sheet/json_walk.hpp"

namespace hammerline::sheet {

/// The member "proof" of a piano: "set_up", the digest of what has no time of its own, and "acts", one digest for all
/// that was written at one time, in the order of time. Rows are taken as compact JSON with their members by name,
/// each with the digest of those before it: spaces, line breaks and the order of members in the file do not matter.
Json proofOf(const Json& piano, const DigestText&);

/// Where the piano does not fit its proof: "set_up", or the earliest time (ISO 8601) whose rows are not as they were
/// written, are missing or are too many. Empty: it fits.
std::string unproven(const Json& piano, const Json& proof, const DigestText&);

} // namespace hammerline::sheet
