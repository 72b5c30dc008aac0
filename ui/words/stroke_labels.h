// What stands in the picture of a stroke: a figure and, smaller, what it means.
#pragma once

#include "ui/words/action.h"

namespace hammerline::words {

/// "as read", "after the plan"
QString strokeRowName(bool afterPlan);

/// Head of the picture of all notes; keys: 0 all, 1 naturals, 2 sharps.
QString strokeAllName(bool afterPlan, int keys);
/// What black, bar, box and triangle mean, a line each.
QStringList strokeLegend(const Piano&);

struct StrokeLabel {
    StrokeEvent event{};
    double at = 0;  // mm of the key's way
    QString figure; // "let-off at 8.95"
    QString means;  // "5.1 from the string"
};
/// In the order in which they should find room: let-off, bottom, damper, lost motion.
std::vector<StrokeLabel> strokeLabels(const NoteAction&, const Piano&);

/// "45 F4 damper lift timing": a note whose place on the key's way is out, as the picture of all names it.
QString strokeOutName(NoteNumber, DimensionId, const Piano&);

} // namespace hammerline::words
