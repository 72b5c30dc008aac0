// The story of an invented piano, told line by line as a person would have done it.
#pragma once

#include "db/bench_book.h"

namespace hammerline::app {

/// A clock that the story winds: days are told from today, so that an invented job never lies in the future.
struct StoryClock {
    std::int64_t now = 0; // microseconds since 1970 UTC
    std::int64_t today = 0;
};

/// `story`: lines as resources/demo/README.md lists them; `readings`: the passes in the long form of an export.
/// Refuses what the commands of the same lines refuse, and usage for a line that is none.
Outcome<void> tellStory(BenchBook&, StoryClock&, std::string_view story, std::string_view readings);

} // namespace hammerline::app
