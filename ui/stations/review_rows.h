// What the Review station lists: causes first, then readings, worst first, and counts by dimension.
#pragma once

#include "ui/stations/station_words.h"

namespace hammerline {

struct ReviewFilter {
    enum class Show : std::uint8_t { out, uneven, undecided, all } show = Show::out;
    std::optional<DimensionId> dimension;
    std::optional<KeyColour> colour;
    std::optional<std::size_t> section;
    bool takes(const Judged&, const Piano&) const;
};

/// Keys are places in Review::ranked; with causes first under a heading of their own (keys -2 - cause).
std::vector<ListRow> reviewRows(const PassView&, const Piano&, const ReviewFilter&);
std::vector<ListRow> causeRows(const PassView&, const Piano&);
/// Keys are rows of the catalogue of dimensions.
std::vector<ListRow> dimensionRows(const Review&);
/// "let-off", "let-off and key dip", "5 dimensions": of what was read.
QString dimensionsText(const Review&);
/// "Measure again: note 47, key dip."
QString doubtText(const Review&, const Piano&);

} // namespace hammerline
