// What failing_calls.cpp tells the test of the calls: how many there were, and for the replay of a power cut a record
// of each, this head and the bytes of a write behind it.
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

/// In memory that both share, seen even after a kill.
struct CallsSeen {
    static constexpr std::uint64_t kMost = 32'768;
    std::uint64_t calls = 0;
    char struck[24] = {};     // the name of the call that failed last
    bool turning[kMost] = {}; // of each call, from 1: it makes bytes last, or gives or takes a name
};

} // namespace hammerline::soak
