#include "ui/words/distance_parts.h"

#include "ui/words/said.h"

#include <algorithm>

namespace hammerline::words {

namespace {

QString atPart(const char* text) {
    return QCoreApplication::translate("distance", text);
}

struct PartsRow {
    DimensionId id;
    const char* fixed;
    bool crown;
};

constexpr std::array kDistanceParts{
    PartsRow{dimension::letOff, QT_TRANSLATE_NOOP("distance", "string"), true},
    PartsRow{dimension::blow, QT_TRANSLATE_NOOP("distance", "string"), true},
    PartsRow{dimension::checking, QT_TRANSLATE_NOOP("distance", "string"), true},
    PartsRow{dimension::drop, QT_TRANSLATE_NOOP("distance", "let-off"), true},
    PartsRow{dimension::damperStart, QT_TRANSLATE_NOOP("distance", "at rest"), true},
    PartsRow{dimension::halfBlow, QT_TRANSLATE_NOOP("distance", "string"), true},
    PartsRow{dimension::keyDip, QT_TRANSLATE_NOOP("distance", "at rest"), false},
    PartsRow{dimension::lostMotion, QT_TRANSLATE_NOOP("distance", "at rest"), false},
    PartsRow{dimension::aftertouch, QT_TRANSLATE_NOOP("distance", "let-off"), false},
    PartsRow{dimension::playerClearance, QT_TRANSLATE_NOOP("distance", "finger"), false},
    PartsRow{dimension::sharpHeight, QT_TRANSLATE_NOOP("distance", "naturals"), false},
    PartsRow{dimension::sharpProud, QT_TRANSLATE_NOOP("distance", "naturals"), false},
};

} // namespace

QString goodOnSlip() {
    return atPart(QT_TRANSLATE_NOOP("distance", "good"));
}

DistanceParts partsOfDistance(DimensionId id) {
    const auto found = std::ranges::find(kDistanceParts, id, &PartsRow::id);
    if (found == kDistanceParts.end()) return {};
    return {atPart(found->fixed), found->crown};
}

} // namespace hammerline::words
