#include "core/sheet/check_sheet.h"

#include <set>

namespace hammerline {

bool stands(const Judged& judged) {
    const bool outside = judged.verdict == Verdict::low || judged.verdict == Verdict::high;
    return outside || judged.verdict == Verdict::undecided || judged.uneven || judged.step;
}

CheckSheet checkSheet(const PianoRecord& record, const PassView& view) {
    CheckSheet sheet;
    sheet.asked = view.review.asked;
    std::set<NoteNumber> out, read;
    for (const Judged& judged : view.review.ranked) {
        read.insert(judged.cell.note);
        if (judged.verdict == Verdict::low || judged.verdict == Verdict::high) out.insert(judged.cell.note);
        if (!stands(judged)) continue;
        const auto zone = view.review.zones.find(judged.cell);
        sheet.lines.push_back({&judged, colourOf(judged.cell.note, record.piano),
                               sectionIndexOf(judged.cell.note, record.piano),
                               zone == view.review.zones.end() ? nullptr : &zone->second});
    }
    sheet.notesOut = static_cast<int>(out.size());
    sheet.notesRead = static_cast<int>(read.size());
    return sheet;
}

} // namespace hammerline
