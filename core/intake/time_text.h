// Points in time as text: 2026-11-25T04:27:00.123456Z.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace hammerline {

/// Microseconds since 1970 UTC (ISO 8601, UTC, up to six decimals of a second). None where it is no such time.
std::optional<std::int64_t> readUtcTime(std::string_view);

} // namespace hammerline
