// One record of the calls that failing_calls.cpp writes down: this head, and the bytes of a write behind it.
#pragma once

#include <cstdint>

namespace hammerline::soak {

enum class CallKind : std::uint32_t { made, wrote, cut, synced, renamed, linked, unlinked };

struct CallHead {
    CallKind kind;
    std::uint64_t node; // the file itself, whatever its names
    std::uint64_t at;   // of a write: its place; of cut: the new size; of made: 1 where it was emptied
    std::uint64_t size; // bytes that follow
    char from[512];
    char to[512];
};

} // namespace hammerline::soak
