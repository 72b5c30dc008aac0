// One distance drawn large between the two parts it is measured at: nothing moves but the part. The zone lies in the
// gap as a slip of paper from the fixed part, torn at its far end; what is too much is a block between slip and part,
// what is missing a block within the slip.
#pragma once

#include "core/judge/judge.h"
#include "ui/widgets/drawn_style.h"

namespace hammerline {

struct DistancePicture {
    DimensionId id{};
    Zone zone;
    std::optional<double> value; // trade units; none: the part in outline at the aim
    std::optional<Judged> judged;
    QString figure; // the value as it is shown
};

void paintDistance(QPainter&, const QRectF&, const DistancePicture&, const DrawnStyle&);

} // namespace hammerline
