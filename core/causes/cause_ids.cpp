#include "core/causes/cause_ids.h"

#include <array>

namespace hammerline {

std::span<const std::string_view> causeKeys() {
    static constexpr std::array<std::string_view, 19> keys = {
        "sunk-balance-rail",  "crushed-balance-felts", "thick-back-cloth",      "packed-cloths",     "low-key-backs",
        "moved-wood",         "hammers-filed",         "crushed-rest-cushions", "rail-end-or-piece", "blow-too-short",
        "jack-cannot-escape", "loose-let-off-rail",    "checks-after-dip",      "isolated-part",     "section-block",
        "loose-capstan",      "unstable-rest",         "finger-holds-wippen",   "nothing-measurable"};
    return keys;
}

} // namespace hammerline
