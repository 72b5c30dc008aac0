// The stable ids of causes (commands.md), in the order in which they are looked for.
#pragma once

#include <array>
#include <span>
#include <string_view>

namespace hammerline {

inline constexpr auto kCauseKeys = std::to_array<std::string_view>(
    {"sunk-balance-rail", "crushed-balance-felts", "thick-back-cloth", "packed-cloths", "low-key-backs", "moved-wood",
     "hammers-filed", "crushed-rest-cushions", "rail-end-or-piece", "blow-too-short", "jack-cannot-escape",
     "loose-let-off-rail", "checks-after-dip", "isolated-part", "section-block", "loose-capstan", "unstable-rest",
     "finger-holds-wippen", "nothing-measurable"});

std::span<const std::string_view> causeKeys();

} // namespace hammerline
