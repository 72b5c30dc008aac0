// What is left and what settles, as the commands write it with --json: arrays, lengths in mm.
#pragma once

#include "core/reserve/reserve.h"
#include "core/reserve/settling.h"

#include <span>

namespace hammerline {

/// [{of, note, from, left, unit, per_round, rounds, read}]; null where it is not known.
std::string reservesJson(std::span<const Reserve>);
/// [{part, notes, first_visit, settled_by, source, bands: [{dimension, keys, least, most}]}]; figures of words are
/// null.
std::string settlingsJson(std::span<const Settling>);
/// [{note, dimension, low, high}]: what to read then.
std::string settlingCellsJson(std::span<const SettlingCell>);

} // namespace hammerline
