// The finish line as JSON, the same in the plan, the check and the comparison.
#pragma once

#include "core/plan/finish_line.h"
#include "core/sheet/json_number.hpp"

namespace hammerline::sheet {

/// The grade of the piano by all that is known, and what is still asked for.
inline Json finishRow(const FinishLine& finish) {
    Json dimensions = Json::array();
    for (const auto& [id, count] : finish.byDimension)
        dimensions.push_back({{"dimension", text(key(id))},
                              {"cells", count.cells},
                              {"plainly_outside", rounded(count.outside)},
                              {"at_most", rounded(count.atMost())}});
    Json uneven = Json::array();
    for (const Cell cell : finish.uneven)
        uneven.push_back({{"note", cell.note.value}, {"dimension", text(key(cell.dimension))}});
    return {{"grade", text(key(finish.grade))},
            {"missing_for_grade", texts(finish.missing)},
            {"cells", finish.all.cells},
            {"plainly_outside", rounded(finish.all.outside)},
            {"at_most", rounded(finish.all.atMost())},
            {"dimensions", dimensions},
            {"uneven", uneven},
            {"readings", finish.readings},
            {"notes", finish.notes},
            {"minutes", rounded(finish.minutes)},
            {"stop", finish.stop}};
}

} // namespace hammerline::sheet
