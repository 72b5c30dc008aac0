// One note's action drawn to scale: the linkage after the plan as a body, as read as a broken outline, what is typical
// hatched, and the gap at the string ten times larger. For screen and paper.
#pragma once

#include "core/stroke/drawn_note.h"
#include "ui/widgets/drawn_style.h"

namespace hammerline {

struct LinkageScene {
    const DrawnNote* body = nullptr;
    const DrawnNote* outline = nullptr; // null: nothing to compare with
    double travel = 0;                  // of the body's key, mm
    double travelOfOutline = 0;
    bool caught = false; // after a blow, the key held: the hammer in its check
    bool names = true;
    bool lens = true;
    std::optional<StrokeBand> letOffZone{}; // mm from the string, for the lens
    QString lensTitle{};
    QString lensFigure{}; // the let-off of the body
    QString lensRemark{}; // of the outline
};

void paintLinkage(QPainter&, const QRectF&, const LinkageScene&, const DrawnStyle&);
/// Its two halves, for a key that moves: what stands behind all that moves, the lens and the names of what stands
/// still, whatever the travel; then, over it, what another travel changes.
void paintLinkageStill(QPainter&, const QRectF&, const LinkageScene&, const DrawnStyle&);
void paintLinkageMoving(QPainter&, const QRectF&, const LinkageScene&, const DrawnStyle&);

} // namespace hammerline
