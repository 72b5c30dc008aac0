// A typed number without its unit, kept as an exact fraction: decimal, fraction or mixed number (computation 2).
#pragma once

#include "core/refusal/refusal.h"
#include "core/units/exact.h"

#include <string_view>

namespace hammerline {

struct TypedNumber {
    Wide numerator{};
    Wide denominator = 1;     // > 0
    bool fraction = false;    // a/b, a b/c or a vulgar-fraction character
    bool askGrouping = false; // 1,250 or 1.250: may be thousands
    std::size_t length{};     // code points read
};

/// Reads the number at the start of a text of normalised code points (see quantity.cpp); no sign.
tl::expected<TypedNumber, RefusalCode> readNumber(std::u32string_view text);

} // namespace hammerline
