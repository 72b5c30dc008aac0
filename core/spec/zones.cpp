#include "core/spec/spec.h"

#include <charconv>
#include <cmath>

namespace hammerline {
namespace {

// Places h and x begin at a pitch, G6 and F7: strings and hammers follow the pitch, whatever keys lie outside.
constexpr char kTop = 'x';
constexpr int kHighTrebleMidi = 91, kTopMidi = 101;

std::optional<NoteRange> rangeIn(std::string_view place) {
    NoteRange range;
    const char* const end = place.data() + place.size();
    const auto first = std::from_chars(place.data(), end, range.first);
    if (first.ec != std::errc{} || first.ptr == end || *first.ptr != '-') return std::nullopt;
    const auto last = std::from_chars(first.ptr + 1, end, range.last);
    if (last.ec != std::errc{} || last.ptr != end || range.last < range.first) return std::nullopt;
    return range;
}

std::int64_t between(std::int64_t a, std::int64_t b, double share) {
    return a + std::llround(share * static_cast<double>(b - a));
}

std::optional<std::int64_t> between(std::optional<std::int64_t> a, std::optional<std::int64_t> b, double share) {
    return a && b ? std::optional(between(*a, *b, share)) : std::nullopt;
}

Zone between(const Zone& a, const Zone& b, double share) {
    return {between(a.low, b.low, share), between(a.nominal, b.nominal, share), between(a.high, b.high, share)};
}

bool names(std::string_view place, NoteNumber note, char letter) {
    if (place.empty()) return true;
    if (const auto range = rangeIn(place)) return range->contains(note);
    const bool named = place.find(letter) != std::string_view::npos;
    return named || (letter == kTop && place.find('h') != std::string_view::npos);
}

} // namespace

char placeOf(NoteNumber note, const Piano& piano) {
    if (midiOf(note, piano) >= kHighTrebleMidi) return 'h';
    const std::size_t section = sectionIndexOf(note, piano);
    return section == 0 ? 'b' : section == 1 ? 't' : 'm';
}

namespace {

char letterOf(NoteNumber note, const Piano& piano) {
    return midiOf(note, piano) >= kTopMidi ? kTop : placeOf(note, piano);
}

} // namespace

bool placeNames(std::string_view place, NoteNumber note, const Piano& piano) {
    return names(place, note, letterOf(note, piano));
}

bool ordered(const Zone& zone) {
    return (!zone.low || *zone.low <= zone.nominal) && (!zone.high || zone.nominal <= *zone.high);
}

Zones::Zones(const SpecSheet& sheet, const Piano& piano, std::span<const Override> overrides)
    : m_notes(piano.notes)
    , m_zones(dimensions().size() * static_cast<std::size_t>(piano.notes))
    , m_step(sheet.step)
    , m_sheet(sheet.name)
    , m_source(sheet.source) {
    std::string letters;
    for (int n = 1; n <= m_notes; ++n)
        letters += letterOf(NoteNumber{n}, piano);
    for (const ZoneRow& row : sheet.zones)
        lay(row, piano, letters);
    for (const Override& each : overrides) {
        std::optional<Zone>* zone = slot(each.cell);
        if (!zone) continue;
        *zone = each.zone;
        m_overrides.insert_or_assign(each.cell, each);
    }
}

void Zones::lay(const ZoneRow& row, const Piano& piano, std::string_view letters) {
    std::vector<NoteNumber> notes;
    for (int n = 1; n <= m_notes; ++n)
        if (names(row.place, NoteNumber{n}, letters[static_cast<std::size_t>(n - 1)])) notes.push_back(NoteNumber{n});
    if (notes.empty()) return;
    const int first = notes.front().value;
    const int width = notes.back().value - first;
    for (const NoteNumber note : notes) {
        if (row.colour && colourOf(note, piano) != *row.colour) continue;
        const double share = width == 0 ? 0.0 : static_cast<double>(note.value - first) / width;
        if (std::optional<Zone>* zone = slot({note, row.dimension})) *zone = between(row.first, row.last, share);
    }
}

std::optional<Zone>* Zones::slot(Cell cell) {
    const int note = cell.note.value;
    if (note < 1 || note > m_notes || cell.dimension.row >= dimensions().size()) return nullptr;
    return &m_zones[cell.dimension.row * static_cast<std::size_t>(m_notes) + static_cast<std::size_t>(note - 1)];
}

const std::optional<Zone>& Zones::at(Cell cell) const {
    static const std::optional<Zone> nothing;
    const int note = cell.note.value;
    if (note < 1 || note > m_notes || cell.dimension.row >= dimensions().size()) return nothing;
    return m_zones[cell.dimension.row * static_cast<std::size_t>(m_notes) + static_cast<std::size_t>(note - 1)];
}

const Override* Zones::overrideAt(Cell cell) const {
    const auto found = m_overrides.find(cell);
    return found == m_overrides.end() ? nullptr : &found->second;
}

bool Zones::overridden(Cell cell) const {
    return overrideAt(cell) != nullptr;
}

std::optional<std::int64_t> Zones::step(DimensionId id) const {
    const auto found = m_step.find(id);
    return found == m_step.end() ? std::nullopt : std::optional(found->second);
}

} // namespace hammerline
