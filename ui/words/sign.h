// How a direction is drawn: round as it turns on this piano, else as a plus, a minus or an arrow.
#pragma once

#include <cstdint>

namespace hammerline::words {

enum class Sign : std::uint8_t { none, anticlockwise, clockwise, add, remove, toward, away, look };

} // namespace hammerline::words
