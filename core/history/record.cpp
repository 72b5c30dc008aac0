#include "core/history/record.h"

#include "core/history/straps.h"

#include <algorithm>

namespace hammerline {

const Pass* PianoRecord::pass(int number) const {
    if (number < 1 || static_cast<std::size_t>(number) > passes.size()) return nullptr;
    return &passes[static_cast<std::size_t>(number) - 1];
}

namespace {

/// Acts are numbered in the book; records made without a book carry no numbers, then the pass decides: what was done
/// follows the readings of its pass.
bool doneAfter(std::int64_t doneOrder, int donePass, std::int64_t readingOrder, int readingPass) {
    if (doneOrder > 0 && readingOrder > 0) return doneOrder > readingOrder;
    return donePass >= readingPass;
}

bool mendedSince(const PianoRecord& record, Cell cell, std::int64_t readingOrder) {
    return std::any_of(record.findings.begin(), record.findings.end(), [&](const Finding& finding) {
        if (finding.state != FindingState::mended || finding.order <= readingOrder) return false;
        if (finding.note && *finding.note != cell.note) return false;
        const Part* part = findPart(finding.part);
        if (!part) return false;
        return part->staleAll || std::find(part->stale.begin(), part->stale.end(), cell.dimension) != part->stale.end();
    });
}

} // namespace

std::vector<Cell> staleCells(const PianoRecord& record, const Pass& pass) {
    std::vector<Cell> stale;
    // read while the strap held the wippen up: no lost motion at all
    const std::vector<bool> tight = tightStraps(record, pass);
    const bool anyTight = std::find(tight.begin(), tight.end(), true) != tight.end();
    if (record.done.empty() && record.findings.empty() && !anyTight) return stale;
    // Per note the operations done at it, so that 88 notes and a thousand ticks stay cheap.
    std::vector<std::vector<const Done*>> byNote(static_cast<std::size_t>(record.piano.notes) + 1);
    for (const Done& done : record.done)
        for (const NoteNumber note : done.notes)
            if (record.piano.contains(note)) byNote[static_cast<std::size_t>(note.value)].push_back(&done);
    const bool mended = std::any_of(record.findings.begin(), record.findings.end(),
                                    [](const Finding& f) { return f.state == FindingState::mended; });
    for (const auto& each : pass.cells) {
        const Cell& cell = each.first;
        const Measured& measured = each.second;
        if (measured.missing() || !record.piano.contains(cell.note)) continue;
        const auto disturbedFrom = [&](NoteNumber note) {
            const auto& done = byNote[static_cast<std::size_t>(note.value)];
            return std::any_of(done.begin(), done.end(), [&](const Done* work) {
                return doneAfter(work->order, work->pass, measured.order(), pass.number) &&
                       disturbs(work->operation, note, cell, record.piano);
            });
        };
        bool disturbed = disturbedFrom(cell.note);
        if (cell.dimension == dimension::sharpHeight)
            for (const NoteNumber natural : neighbouringNaturals(cell.note, record.piano))
                disturbed = disturbed || disturbedFrom(natural);
        const bool held =
            cell.dimension == dimension::lostMotion && tight[static_cast<std::size_t>(cell.note.value) - 1];
        if (held || disturbed || (mended && mendedSince(record, cell, measured.order()))) stale.push_back(cell);
    }
    return stale;
}

} // namespace hammerline
