// The stable ids of causes (commands.md), in the order in which they are looked for.
#pragma once

#include <span>
#include <string_view>

namespace hammerline {

std::span<const std::string_view> causeKeys();

} // namespace hammerline
