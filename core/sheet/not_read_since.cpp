#include "core/sheet/not_read_since.h"

#include <algorithm>
#include <set>

namespace hammerline {

std::vector<NotReadSince> notReadSince(std::span<const PassView* const> views) {
    std::vector<NotReadSince> found;
    if (views.empty()) return found;
    std::set<Cell> readLater;
    const auto read = [&](const PassView* view) {
        if (!view) return;
        for (const auto& [cell, measured] : view->pass.cells)
            if (!measured.missing()) readLater.insert(cell);
    };
    read(views.back());
    for (std::size_t i = views.size() - 1; i-- > 0;) {
        const PassView* view = views[i];
        if (!view) continue;
        for (const Judged& judged : view->review.ranked) {
            const bool outside = judged.verdict == Verdict::low || judged.verdict == Verdict::high;
            if (outside && !readLater.contains(judged.cell)) found.push_back({view->pass.number, judged});
        }
        read(view);
    }
    std::ranges::sort(found, {}, [](const NotReadSince& each) {
        return std::pair(each.judged.cell.dimension, each.judged.cell.note);
    });
    return found;
}

} // namespace hammerline
