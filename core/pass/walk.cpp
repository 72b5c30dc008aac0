// The order of walking along the keyboard with a gauge in the hand.
#include "core/pass/pass.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace hammerline {
namespace {

std::vector<NoteNumber> notesOf(WalkOrder order, const Piano& piano, int n, std::span<const NoteNumber> listed) {
    std::vector<NoteNumber> notes;
    const auto each = [&](auto take) {
        for (int i = 1; i <= piano.notes; ++i)
            if (take(NoteNumber{i})) notes.push_back(NoteNumber{i});
    };
    switch (order) {
    case WalkOrder::up:
        each([](NoteNumber) { return true; });
        break;
    case WalkOrder::naturalsThenSharps:
        for (const auto colour : {KeyColour::natural, KeyColour::sharp})
            each([&](NoteNumber note) { return colourOf(note, piano) == colour; });
        break;
    case WalkOrder::everyNth:
        each([&](NoteNumber note) { return (note.value - 1) % std::max(1, n) == 0; });
        break;
    case WalkOrder::sectionEnds:
        for (const Section& s : sectionsOf(piano)) {
            notes.push_back(NoteNumber{s.range.first});
            if (s.range.last != s.range.first) notes.push_back(NoteNumber{s.range.last});
        }
        break;
    case WalkOrder::listed:
        for (const NoteNumber note : listed)
            if (piano.contains(note)) notes.push_back(note);
        break;
    }
    return notes;
}

} // namespace

std::vector<NoteNumber> sampleNotes(const Piano& piano) {
    struct Sample {
        double along; // share of the section
        KeyColour colour;
    };
    constexpr std::array kSamples = {Sample{.along = 0.2, .colour = KeyColour::natural},
                                     Sample{.along = 0.5, .colour = KeyColour::sharp},
                                     Sample{.along = 0.8, .colour = KeyColour::natural}};
    std::set<NoteNumber> chosen;
    for (const Section& section : sectionsOf(piano)) {
        const auto [first, last] = section.range;
        for (const Sample& sample : kSamples) {
            const int wanted = first + static_cast<int>(std::lround(sample.along * (last - first)));
            std::optional<NoteNumber> nearest;
            for (int n = first; n <= last; ++n) {
                const bool fits = colourOf({n}, piano) == sample.colour && !chosen.contains({n});
                const bool nearer = !nearest || std::abs(n - wanted) < std::abs(nearest->value - wanted);
                if (fits && nearer) nearest = NoteNumber{n};
            }
            if (nearest) chosen.insert(*nearest);
        }
    }
    return {chosen.begin(), chosen.end()};
}

std::vector<Cell> walk(WalkOrder order, const Piano& piano, std::span<const DimensionId> asked, int n, bool acrossFirst,
                       std::span<const NoteNumber> listed) {
    const std::vector<NoteNumber> notes = notesOf(order, piano, n, listed);
    std::vector<Cell> cells;
    cells.reserve(notes.size() * asked.size());
    const auto take = [&](NoteNumber note, DimensionId id) {
        if (fitted(id, note, piano)) cells.push_back(Cell{note, id});
    };
    if (acrossFirst) {
        for (const NoteNumber note : notes)
            for (const DimensionId id : asked)
                take(note, id);
    } else {
        for (const DimensionId id : asked)
            for (const NoteNumber note : notes)
                take(note, id);
    }
    return cells;
}

} // namespace hammerline
