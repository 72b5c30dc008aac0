#include "core/causes/in_visit.h"

#include "core/history/visit.h"
#include "core/judge/judge.h"

#include <algorithm>

namespace hammerline {

namespace {

/// Whether something done after that reading, in its pass or later, before the end of `until`, moved the cell.
bool movedSince(const PianoRecord& record, const Pass& readIn, const Measured& measured, Cell cell, int until) {
    return std::any_of(record.done.begin(), record.done.end(), [&](const Done& done) {
        const bool later = done.pass > readIn.number || (done.pass == readIn.number && done.order >= measured.order());
        if (!later || done.pass > until) return false;
        return std::any_of(done.notes.begin(), done.notes.end(),
                           [&](NoteNumber at) { return disturbs(done.operation, at, cell, record.piano); });
    });
}

} // namespace

Pass foundInVisit(const PianoRecord& record, const Pass& pass) {
    Pass found = pass;
    for (auto each = record.passes.rbegin(); each != record.passes.rend(); ++each) {
        if (each->number >= pass.number) continue;
        if (!inOneVisit(*each, pass)) break;
        const Pass earlier = withRelativeHeights(record.piano, *each);
        for (const auto& [cell, measured] : earlier.cells) {
            if (measured.missing() || found.cells.contains(cell)) continue;
            if (!otherMethod(cell.dimension, earlier, pass).empty()) continue;
            // Between the passes: what was done after this pass's own readings is the next pass's matter.
            if (movedSince(record, *each, measured, cell, pass.number - 1)) continue;
            found.cells.emplace(cell, measured);
        }
    }
    return found;
}

} // namespace hammerline
