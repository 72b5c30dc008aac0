#include "core/history/entry_pass.h"

#include <algorithm>

namespace hammerline {

std::optional<int> passForEntry(const PianoRecord& record) {
    if (record.passes.empty()) return std::nullopt;
    const int last = static_cast<int>(record.passes.size());
    const bool workedSince =
        std::any_of(record.done.begin(), record.done.end(), [&](const Done& d) { return d.pass >= last; });
    if (workedSince) return std::nullopt;
    return last;
}

} // namespace hammerline
