#include "core/survey/numbering.h"

#include <algorithm>
#include <charconv>
#include <set>

namespace hammerline {
namespace {

constexpr std::array kNumbered = {
    Numbered{"key", 'K', MarkPlace::top},
    Numbered{"hammer-head", 'H', MarkPlace::bassSide},
    Numbered{"wippen", 'W', MarkPlace::bassSide},
    Numbered{"sticker", 'S', MarkPlace::bassSide},
    Numbered{"lifter", 'L', MarkPlace::bassSide},
    Numbered{"damper-lever", 'D', MarkPlace::bassSide},
    Numbered{"damper-underlever", 'D', MarkPlace::bassSide},
    Numbered{"overdamper", 'O', MarkPlace::bassSide},
    Numbered{"key-top", 'T', MarkPlace::underside},
};

constexpr std::array<std::string_view, 3> kPlaces = {"top", "bass-side", "underside"};
constexpr int kMostMarks = 2000;

bool chosenOrAll(std::span<const std::string_view> chosen, std::string_view part) {
    return chosen.empty() || std::find(chosen.begin(), chosen.end(), part) != chosen.end();
}

std::optional<int> number(std::string_view text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || value < 0 || value > kMostMarks)
        return std::nullopt;
    return value;
}

/// "23" or "1-20"; a range may run downwards, as parts do that lie with their back to you.
bool readItem(std::string_view item, std::vector<int>& out) {
    const auto dash = item.find('-', 1);
    const auto first = number(item.substr(0, dash));
    const auto last = dash == std::string_view::npos ? first : number(item.substr(dash + 1));
    if (!first || !last) return false;
    const int step = *first <= *last ? 1 : -1;
    for (int i = *first;; i += step) {
        out.push_back(i);
        if (i == *last) return out.size() <= kMostMarks;
    }
}

/// The numbers outside one longest rising run (the fewest that must move).
std::vector<int> outsideRisingRun(const std::vector<int>& numbers) {
    std::vector<std::size_t> length(numbers.size(), 1), before(numbers.size(), numbers.size());
    std::size_t last = 0;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j)
            if (numbers[j] < numbers[i] && length[j] + 1 > length[i]) {
                length[i] = length[j] + 1;
                before[i] = j;
            }
        if (length[i] > length[last]) last = i;
    }
    std::set<std::size_t> kept;
    for (std::size_t i = last; i < numbers.size(); i = before[i])
        kept.insert(i);
    std::vector<int> out;
    for (std::size_t i = 0; i < numbers.size(); ++i)
        if (!kept.contains(i)) out.push_back(numbers[i]);
    return out;
}

} // namespace

std::string_view key(MarkPlace place) {
    return kPlaces[static_cast<std::size_t>(place)];
}

std::span<const Numbered> numberedParts() {
    return kNumbered;
}

std::vector<Mark> marksFor(const Piano& piano, std::span<const std::string_view> chosen) {
    std::vector<Mark> out;
    for (const auto& [name, letter, place] : kNumbered) {
        const Part* part = findPart(name);
        if (!part || !chosenOrAll(chosen, name)) continue;
        for (const NoteNumber n : notesOf(*part, piano))
            out.push_back({name, n, sectionIndexOf(n, piano), railPieceOf(n, piano), place,
                           std::string(1, letter) + " " + std::to_string(n.value)});
    }
    return out;
}

Outcome<std::vector<int>> parseMarks(std::string_view text) {
    std::vector<int> out;
    while (!text.empty()) {
        const auto end = std::min(text.find_first_of(" ,;\t\n\r"), text.size());
        const auto item = text.substr(0, end);
        if (!item.empty() && !readItem(item, out)) return refuse(RefusalCode::unknownNote, std::string(item));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return out;
}

MarkCheck checkMarks(std::span<const int> read, std::string_view partKey, const Piano& piano) {
    MarkCheck check;
    const Part* part = findPart(partKey);
    std::set<int> expected, seen;
    if (part)
        for (const NoteNumber n : notesOf(*part, piano))
            expected.insert(n.value);
    std::vector<int> once;
    for (const int n : read) {
        if (!expected.contains(n))
            check.foreign.push_back(n);
        else if (!seen.insert(n).second)
            check.doubled.push_back(n);
        else
            once.push_back(n);
    }
    std::set_difference(expected.begin(), expected.end(), seen.begin(), seen.end(), std::back_inserter(check.missing));
    check.outOfSequence = outsideRisingRun(once);
    return check;
}

} // namespace hammerline
