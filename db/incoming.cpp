#include "db/incoming.h"

#include <algorithm>
#include <set>

namespace hammerline {

std::vector<BenchBook::Incoming> incomingTo(std::span<const PianoLine> book, std::vector<PianoRecord> file) {
    std::vector<BenchBook::Incoming> incoming;
    std::set<std::string> claimed;
    const auto claim = [&](const auto& is) -> std::string {
        const auto found = std::find_if(
            book.begin(), book.end(), [&](const PianoLine& line) { return is(line) && !claimed.contains(line.uuid); });
        if (found != book.end()) claimed.insert(found->uuid);
        return found == book.end() ? std::string{} : found->uuid;
    };
    for (PianoRecord& record : file) {
        std::string into = claim([&](const PianoLine& line) { return line.uuid == record.uuid; });
        incoming.push_back({std::move(record), std::move(into)});
    }
    for (auto& each : incoming)
        if (each.into.empty())
            each.into = claim([&](const PianoLine& line) { return line.name == each.record.piano.name; });
    return incoming;
}

} // namespace hammerline
