// The order of walking along the keyboard with a gauge in the hand.
#include "core/pass/pass.h"

#include <algorithm>

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
