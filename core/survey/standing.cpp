// How each part stands at each note, and what has to be mended before a note is regulated (bench-practice 3: Must).
#include "core/survey/survey.h"

#include <algorithm>
#include <set>

namespace hammerline {
namespace {

bool isMust(const Part& part, const Finding& finding) {
    if (part.must == Must::no) return false;
    if (part.mustIf.empty()) return true;
    const Remedy* remedy = remedyOf(finding);
    return std::any_of(part.mustIf.begin(), part.mustIf.end(),
                       [&](std::string_view word) { return word == finding.fault || (remedy && word == remedy->key); });
}

bool sameSection(const Part& part, NoteNumber a, NoteNumber b, const Piano& piano) {
    // The hammer rest rail has pieces of its own; everything else follows the sections.
    if (part.key == "rest-rail-cloth") return railPieceOf(a, piano) == railPieceOf(b, piano);
    return sectionIndexOf(a, piano) == sectionIndexOf(b, piano);
}

/// Whether mending this finding concerns a note: its own, its section's, its set's or the piano's.
bool reaches(const Part& part, const Finding& finding, NoteNumber note, const Piano& piano, bool wholeSet) {
    if (!fitted(part, note, piano)) return false;
    if (!finding.note || part.unit == PartUnit::piano) return true;
    if (part.unit == PartUnit::section) return sameSection(part, *finding.note, note, piano);
    return wholeSet || *finding.note == note;
}

} // namespace

const Finding* standingAt(std::string_view part, NoteNumber note, std::span<const Finding> findings) {
    const Finding* newest = nullptr;
    const auto newer = [&](const Finding& f) {
        if (!newest || f.order > newest->order) return true;
        if (f.order < newest->order) return false;
        return f.note.has_value() || !newest->note.has_value();
    };
    for (const Finding& f : findings)
        if (f.part == part && (!f.note || *f.note == note) && newer(f)) newest = &f;
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
    const auto notes = notesOf(part, piano);
    const auto faulty = std::count_if(
        notes.begin(), notes.end(), [&](NoteNumber n) { return stateAt(part.key, n, findings) == FindingState::toDo; });
    return faulty * 10 > static_cast<std::ptrdiff_t>(notes.size());
}

bool blocks(const Finding& finding) {
    const Part* part = findPart(finding.part);
    if (!part || finding.state != FindingState::toDo) return false;
    return !part->mustOverTenth && isMust(*part, finding);
}

bool blocks(const Finding& finding, std::span<const Finding> findings, const Piano& piano) {
    const Part* part = findPart(finding.part);
    if (!part || finding.state != FindingState::toDo || !isMust(*part, finding)) return false;
    return !part->mustOverTenth || overTenth(*part, findings, piano);
}

std::vector<Finding> blockersOf(NoteNumber note, std::span<const Finding> findings, const Piano& piano) {
    std::vector<Finding> out;
    for (const Part& part : parts()) {
        if (part.must == Must::no || !fitted(part, note, piano)) continue;
        const bool wholeSet = part.must == Must::set && part.wholeSet && overTenth(part, findings, piano);
        for (const Finding& f : findings) {
            if (f.part != part.key || !reaches(part, f, note, piano, wholeSet)) continue;
            // A newer word on the same place overrules an older one.
            if (f.note && standingAt(part.key, *f.note, findings) != &f) continue;
            if (!f.note && standingAt(part.key, note, findings) != &f) continue;
            if (!blocks(f, findings, piano)) continue;
            // One finding is enough to name a rail or a set; the note's own comes first.
            const bool own = !f.note || *f.note == note;
            const auto named = std::find_if(out.begin(), out.end(), [&](const Finding& o) { return o.part == f.part; });
            if (named == out.end())
                out.push_back(f);
            else if (own)
                *named = f;
        }
    }
    return out;
}

std::vector<Cell> disturbedBy(const Finding& finding, const Piano& piano) {
    const Part* part = findPart(finding.part);
    if (!part) return {};
    const Remedy* remedy = remedyOf(finding);
    if (remedy && (remedy->key == "leave" || remedy->key == "refer")) return {};
    std::set<Cell> cells;
    for (int i = 1; i <= piano.notes; ++i) {
        const NoteNumber note{i};
        if (!reaches(*part, finding, note, piano, false)) continue;
        for (const DimensionId each : part->stale)
            if (fitted(each, note, piano)) cells.insert({note, each});
    }
    return {cells.begin(), cells.end()};
}

} // namespace hammerline
