#include "ui/stations/stations.h"

#include <QCoreApplication>

namespace hammerline {

const std::array<StationRow, 7>& stationRows() {
    static const std::array<StationRow, 7> rows{{
        {"piano", QT_TRANSLATE_NOOP("Station", "Piano"), makePianoStation},
        {"survey", QT_TRANSLATE_NOOP("Station", "Survey"), makeSurveyStation},
        {"measure", QT_TRANSLATE_NOOP("Station", "Measure"), makeMeasureStation},
        {"review", QT_TRANSLATE_NOOP("Station", "Review"), makeReviewStation},
        {"adjust", QT_TRANSLATE_NOOP("Station", "Adjust"), makeAdjustStation},
        {"passes", QT_TRANSLATE_NOOP("Station", "Passes"), makePassesStation},
        {"work", QT_TRANSLATE_NOOP("Station", "Work"), makeWorkStation},
    }};
    return rows;
}

int stationIndex(const QString& id) {
    const auto& rows = stationRows();
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (id == QLatin1String(rows[i].id)) return static_cast<int>(i);
    return -1;
}

} // namespace hammerline
