// The fields of every supply that is ordered by size.
#pragma once

#include "core/survey/sizes.h"

namespace hammerline::survey {

std::span<const SizeRow> sizeRowsOfSupplies();

} // namespace hammerline::survey
