#include "core/history/adjusted.h"

#include <algorithm>
#include <set>

namespace hammerline {

std::vector<Cell> adjustedCells(const PianoRecord& record, int current) {
    std::set<Cell> cells;
    for (const Pass& pass : record.passes) {
        if (pass.number > current) break;
        const bool between = pass.number < current;
        const std::vector<Cell> stale = staleCells(record, pass);
        for (const auto& [cell, measured] : pass.cells) {
            const bool isStale = std::find(stale.begin(), stale.end(), cell) != stale.end();
            if (isStale)
                cells.insert(cell);
            else if (between)
                cells.erase(cell); // read again after the work
        }
    }
    return {cells.begin(), cells.end()};
}

} // namespace hammerline
