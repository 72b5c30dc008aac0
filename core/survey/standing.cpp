// What has to be mended before a note is regulated follows from where things stand (bench-practice 3: Must).
#include "core/survey/standing.h"

#include <algorithm>
#include <set>

namespace hammerline {
namespace {

struct FeltSize {
    std::string_view part, size;
};
constexpr std::array kFeltSizes = {FeltSize{"damper-felt-wedge", "bichord"}, FeltSize{"damper-felt-clip", "clip"},
                                   FeltSize{"damper-felt-flat", "flat"}, FeltSize{"damper-felt-split-wedge", "split"}};

bool isMust(const Part& part, const Finding& finding) {
    if (part.must == Must::no) return false;
    if (part.mustIf.empty()) return true;
    const Remedy* remedy = remedyOf(finding);
    return std::any_of(part.mustIf.begin(), part.mustIf.end(),
                       [&](std::string_view word) { return word == finding.fault || (remedy && word == remedy->key); });
}

/// Of two words on the same place the newer one counts; of equal age the note's own, then the later in the list.
bool overrules(const Finding& later, const Finding& earlier) {
    if (later.order != earlier.order) return later.order > earlier.order;
    return later.note.has_value() || !earlier.note.has_value();
}

} // namespace

std::size_t pieceOf(const Part& part, NoteNumber note, const Piano& piano) {
    return part.key == "rest-rail-cloth" ? railPieceOf(note, piano) : sectionIndexOf(note, piano);
}

std::string_view damperFeltSize(const Part& part) {
    for (const FeltSize& each : kFeltSizes)
        if (each.part == part.key) return each.size;
    return {};
}

Standing::Standing(std::span<const Finding> findings, const Piano& piano) : m_piano(piano), m_parts(parts().size()) {
    for (OfPart& each : m_parts)
        each.byNote.resize(static_cast<std::size_t>(piano.notes));
    for (const Finding& finding : findings) {
        const Part* part = findPart(finding.part);
        if (!part) continue;
        if (finding.note) put(*part, *finding.note, finding);
        for (int i = 1; !finding.note && i <= piano.notes; ++i)
            put(*part, NoteNumber{i}, finding);
    }
    for (const Part& part : parts()) {
        const bool felt = !damperFeltSize(part).empty();
        int faulty = 0, known = 0;
        for (const NoteNumber n : notesOf(part, piano)) {
            known += !felt || state(part, n) != FindingState::notLookedAt;
            faulty += state(part, n) == FindingState::toDo;
        }
        m_parts[static_cast<std::size_t>(part.number - 1)].overTenth = faulty * 10 > known;
    }
}

void Standing::put(const Part& part, NoteNumber note, const Finding& finding) {
    if (!fitted(part, note, m_piano)) return;
    const Finding*& place =
        m_parts[static_cast<std::size_t>(part.number - 1)].byNote[static_cast<std::size_t>(note.value - 1)];
    if (!place || overrules(finding, *place)) place = &finding;
}

const Finding* Standing::at(const Part& part, NoteNumber note) const {
    return m_piano.contains(note) ? of(part).byNote[static_cast<std::size_t>(note.value - 1)] : nullptr;
}

FindingState Standing::state(const Part& part, NoteNumber note) const {
    const Finding* finding = at(part, note);
    return finding ? finding->state : FindingState::notLookedAt;
}

bool Standing::overTenth(const Part& part) const {
    return of(part).overTenth;
}

bool Standing::blocks(const Finding& finding) const {
    const Part* part = findPart(finding.part);
    if (!part || finding.state != FindingState::toDo || !isMust(*part, finding)) return false;
    return !part->mustOverTenth || overTenth(*part);
}

const Finding* Standing::blockerOf(const Part& part, NoteNumber note) const {
    const Finding* own = at(part, note);
    if (own && blocks(*own)) return own;
    const bool everywhere =
        part.unit == PartUnit::piano || (part.must == Must::set && part.wholeSet && overTenth(part));
    if (!everywhere && part.unit != PartUnit::section) return nullptr;
    for (const Finding* each : of(part).byNote) {
        if (!each || !blocks(*each)) continue;
        if (everywhere || pieceOf(part, *each->note, m_piano) == pieceOf(part, note, m_piano)) return each;
    }
    return nullptr;
}

std::vector<Finding> Standing::blockersOf(NoteNumber note) const {
    std::vector<Finding> out;
    for (const Part& part : parts()) {
        if (part.must == Must::no || !fitted(part, note, m_piano)) continue;
        if (const Finding* blocker = blockerOf(part, note)) out.push_back(*blocker);
    }
    return out;
}

const Part* Standing::damperFeltAt(NoteNumber note) const {
    for (const FeltSize& each : kFeltSizes)
        if (const Part* part = findPart(each.part); state(*part, note) != FindingState::notLookedAt) return part;
    return nullptr;
}

const Finding* standingAt(std::string_view part, NoteNumber note, std::span<const Finding> findings) {
    const Finding* newest = nullptr;
    for (const Finding& f : findings)
        if (f.part == part && (!f.note || *f.note == note) && (!newest || overrules(f, *newest))) newest = &f;
    return newest;
}

FindingState stateAt(std::string_view part, NoteNumber note, std::span<const Finding> findings) {
    const Finding* standing = standingAt(part, note, findings);
    return standing ? standing->state : FindingState::notLookedAt;
}

const Remedy* remedyOf(const Finding& finding) {
    const Part* part = findPart(finding.part);
    if (!part) return nullptr;
    if (!finding.remedy.empty()) return findRemedy(*part, finding.remedy);
    const Fault* fault = findFault(*part, finding.fault);
    return fault ? findRemedy(*part, fault->usualRemedy) : nullptr;
}

bool overTenth(const Part& part, std::span<const Finding> findings, const Piano& piano) {
    return Standing(findings, piano).overTenth(part);
}

bool blocks(const Finding& finding) {
    const Part* part = findPart(finding.part);
    if (!part || finding.state != FindingState::toDo) return false;
    return !part->mustOverTenth && isMust(*part, finding);
}

bool blocks(const Finding& finding, std::span<const Finding> findings, const Piano& piano) {
    return Standing(findings, piano).blocks(finding);
}

std::vector<Finding> blockersOf(NoteNumber note, std::span<const Finding> findings, const Piano& piano) {
    return Standing(findings, piano).blockersOf(note);
}

std::vector<Cell> disturbedBy(const Finding& finding, const Piano& piano) {
    const Part* part = findPart(finding.part);
    if (!part) return {};
    const Remedy* remedy = remedyOf(finding);
    if (remedy && (remedy->key == "leave" || remedy->key == "refer")) return {};
    const bool everywhere = !finding.note || part->unit == PartUnit::piano;
    std::set<Cell> cells;
    for (int i = 1; i <= piano.notes; ++i) {
        const NoteNumber note{i};
        const bool same = part->unit == PartUnit::section
                              ? everywhere || pieceOf(*part, *finding.note, piano) == pieceOf(*part, note, piano)
                              : everywhere || *finding.note == note;
        if (!same || !fitted(*part, note, piano)) continue;
        for (const DimensionId each : part->stale)
            if (fitted(each, note, piano)) cells.insert({note, each});
    }
    return {cells.begin(), cells.end()};
}

} // namespace hammerline
