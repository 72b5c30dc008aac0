// Parts to order: quantities by part and size, whole sets, counts that are not 88, running lengths, sheets, spares
// (bench-practice 3: Counts; trade-facts 5).
#include "core/survey/goods.h"
#include "core/survey/remedy_minutes.h"
#include "core/survey/sizes.h"
#include "core/survey/standing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace hammerline {
namespace {

using Notes = std::set<NoteNumber>;

/// One natural key is 23.5 mm wide, a seventh of the octave span of 164.5 mm (common practice, no source). Strips are
/// reckoned from it and rounded up to a centimetre; they are measured on the piano before they are cut.
constexpr double kNaturalWidth = 23.5;

int up(double value, int step) {
    return static_cast<int>(std::ceil(value / step - 1e-9)) * step;
}

int naturalsIn(const Notes& notes, const Piano& piano) {
    return static_cast<int>(std::count_if(notes.begin(), notes.end(),
                                          [&](NoteNumber n) { return colourOf(n, piano) == KeyColour::natural; }));
}

/// Everything to be mended at one part with one supply.
struct Need {
    const Part* part;
    std::string_view supply;
    Notes notes;
    bool set = false;
    bool bySection = false;
};

/// The notes that are known to have this part. Which damper felt stands where is asked, never assumed: only notes
/// at which this felt was looked at count.
Notes knownNotes(const Part& part, const Standing& standing) {
    const bool asked = !damperFeltSize(part).empty();
    Notes out;
    for (const NoteNumber n : notesOf(part, standing.piano()))
        if (!asked || standing.state(part, n) != FindingState::notLookedAt) out.insert(n);
    return out;
}

Notes sectionsOfNotes(const Part& part, const Notes& notes, const Piano& piano) {
    std::set<std::size_t> pieces;
    for (const NoteNumber n : notes)
        pieces.insert(pieceOf(part, n, piano));
    Notes out;
    for (const NoteNumber n : notesOf(part, piano))
        if (pieces.contains(pieceOf(part, n, piano))) out.insert(n);
    return out;
}

bool declined(const Part& part, const Spares& spares) {
    return std::find(spares.onlyThese.begin(), spares.onlyThese.end(), part.key) != spares.onlyThese.end();
}

std::vector<Need> needsOf(const Part& part, const Standing& standing) {
    std::vector<Need> out;
    for (const NoteNumber n : notesOf(part, standing.piano())) {
        const Finding* f = standing.at(part, n);
        const Remedy* remedy = f && f->state == FindingState::toDo ? remedyOf(*f) : nullptr;
        if (!remedy || remedy->supply.empty()) continue;
        auto need = std::find_if(out.begin(), out.end(), [&](const Need& o) { return o.supply == remedy->supply; });
        if (need == out.end()) need = out.insert(out.end(), Need{&part, remedy->supply, {}, false, false});
        need->notes.insert(n);
        need->set = need->set || remedy->set;
        need->bySection = need->bySection || remedy->key.ends_with("-section");
    }
    return out;
}

int bracketsOf(const Piano& piano) {
    std::size_t n = 0;
    for (const auto& piece : piano.brackets)
        n += piece.size();
    return n > 0 ? static_cast<int>(n) : 2;
}

int piecesPerNote(std::string_view supply) {
    return supply == "front-bushing" || supply == "balance-bushing" ? 2 : 1;
}

/// How many, of which unit.
std::pair<int, std::string_view> countOf(const Need& need, const Piano& piano) {
    const Part& part = *need.part;
    if (isStrip(need.supply)) return {up(naturalsIn(need.notes, piano) * kNaturalWidth, 10), "mm"};
    if (part.key == "moth-rust" && need.supply == "centre-pin") return {centrePinsOf(piano), "piece"};
    if (part.key == "rest-rail-cushions") return {bracketsOf(piano), "piece"};
    if (part.unit == PartUnit::piano || part.unit == PartUnit::section) return {1, "set"};
    return {static_cast<int>(need.notes.size()) * piecesPerNote(need.supply), "piece"};
}

std::string sizeOf(const Need& need, const Piano& piano) {
    if (const auto felt = damperFeltSize(*need.part); !felt.empty()) return std::string(felt);
    const bool ofKeys =
        need.part->key == "front-felt" || need.part->key == "balance-felt" || need.part->key == "key-top";
    if (!ofKeys) return {};
    const int naturals = naturalsIn(need.notes, piano);
    const int sharps = static_cast<int>(need.notes.size()) - naturals;
    return std::to_string(naturals) + " + " + std::to_string(sharps);
}

PartsLine lineOf(Need need, const Standing& standing, const Spares& spares) {
    const Piano& piano = standing.piano();
    const Part& part = *need.part;
    PartsLine line;
    line.part = need.supply;
    line.from = part.key;
    line.found = static_cast<int>(need.notes.size());
    line.notes.assign(need.notes.begin(), need.notes.end());
    const Notes known = knownNotes(part, standing);
    line.of = static_cast<int>(known.size());
    const bool many = part.wholeSet && 10 * line.found > line.of;
    line.wholeSet = part.unit != PartUnit::piano && (need.set || many) && !declined(part, spares);
    if (line.wholeSet) need.notes = known;
    if (part.unit == PartUnit::section || need.bySection) need.notes = sectionsOfNotes(part, need.notes, piano);
    if (part.unit == PartUnit::piano) need.notes = known;
    const auto [count, unit] = countOf(need, piano);
    line.needed = count;
    line.unit = unit;
    line.size = sizeOf(need, piano);
    return line;
}

/// Pieces: a share, rounded up, never fewer than the customary number. Lengths and sheets: the share, to the next
/// centimetre and the next 10 cm2.
void addSpare(PartsLine& line, const Spares& spares) {
    const double share = line.needed * spares.percent / 100;
    if (line.unit == "piece") line.spare = std::max(up(share, 1), spares.atLeast);
    if (line.unit == "mm" || line.unit == "cm2") line.spare = up(share, 10);
    line.quantity = line.needed + line.spare;
}

/// The same supply and size from several parts is one line; a whole set of pins holds the single ones.
void gather(std::vector<PartsLine>& lines, PartsLine line) {
    const auto same = std::find_if(lines.begin(), lines.end(), [&](const PartsLine& o) {
        return o.part == line.part && o.size == line.size && o.unit == line.unit;
    });
    if (same == lines.end()) {
        lines.push_back(std::move(line));
        return;
    }
    same->needed = line.from == "moth-rust" ? std::max(same->needed, line.needed) : same->needed + line.needed;
    same->found += line.found;
    same->of += line.of;
    same->wholeSet = same->wholeSet || line.wholeSet;
    Notes notes(same->notes.begin(), same->notes.end());
    notes.insert(line.notes.begin(), line.notes.end());
    same->notes.assign(notes.begin(), notes.end());
}

/// What is cut from a sheet may have been measured as a piece.
std::vector<PartSize> sizesWithPieces(const Spares& spares) {
    std::vector<PartSize> all = spares.sizes;
    for (const auto& [supply, size] : spares.cut) {
        all.push_back({supply, "width", {}, fmt::format("{:g}", size[0])});
        all.push_back({supply, "length", {}, fmt::format("{:g}", size[1])});
    }
    return all;
}

} // namespace

std::vector<PartsLine> partsList(std::span<const Finding> findings, const Piano& piano, Spares spares) {
    const Standing standing(findings, piano);
    std::vector<PartsLine> lines;
    for (const Part& part : parts())
        for (Need& need : needsOf(part, standing))
            gather(lines, lineOf(std::move(need), standing, spares));
    std::vector<PartsLine> all;
    for (const PartsLine& line : lines) {
        gather(all, line);
        for (PartsLine& companion : companionsOf(line, spares))
            gather(all, std::move(companion));
    }
    all = bySize(std::move(all), sizesWithPieces(spares), piano);
    for (PartsLine& line : all)
        addSpare(line, spares);
    return all;
}

} // namespace hammerline
