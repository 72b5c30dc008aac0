// The words of column heads: a row for each dimension and language.
#pragma once

#include "core/intake/intake.h"

namespace hammerline {

/// Heads without accents, marks and unit, in lower case, between bars: "|dip|touch depth|". An ambiguous head names
/// its likely dimension and is asked about.
struct HeaderWords {
    ColumnUse::Use use;
    DimensionId dimension;
    std::string_view heads;
};
std::span<const HeaderWords> headerWords();

} // namespace hammerline
