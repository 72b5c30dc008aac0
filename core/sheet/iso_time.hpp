// A moment as the exports write it.
#pragma once

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <cstdint>
#include <ctime>
#include <string>

namespace hammerline::sheet {

/// ISO 8601 in UTC, microseconds kept (they are the acts' own); empty for 0.
inline std::string isoTime(std::int64_t microseconds) {
    if (microseconds == 0) return {};
    constexpr std::int64_t kSecond = 1'000'000;
    const std::int64_t part = (microseconds % kSecond + kSecond) % kSecond; // before 1970 too
    const std::int64_t second = microseconds / kSecond - (microseconds % kSecond < 0 ? 1 : 0);
    return fmt::format("{:%Y-%m-%dT%H:%M:%S}.{:06}Z", fmt::gmtime(static_cast<std::time_t>(second)), part);
}

} // namespace hammerline::sheet
