#include "ui/stations/stations.h"

#include <QCoreApplication>

namespace hammerline {

const std::array<StationRow, 6>& stationRows() {
    static const std::array<StationRow, 6> rows{{
        {"piano", QT_TRANSLATE_NOOP("Station", "Piano"), makePianoStation},
        {"survey", QT_TRANSLATE_NOOP("Station", "Survey"), makeSurveyStation},
        {"measure", QT_TRANSLATE_NOOP("Station", "Measure"), makeMeasureStation},
        {"review", QT_TRANSLATE_NOOP("Station", "Review"), makeReviewStation},
        {"work", QT_TRANSLATE_NOOP("Station", "Work"), makeWorkStation},
        {"passes", QT_TRANSLATE_NOOP("Station", "Passes"), makePassesStation},
    }};
    return rows;
}

int stationIndex(const QString& id) {
    if (id == QLatin1String("adjust")) return stationIndex(QStringLiteral("work")); // its former name
    const auto& rows = stationRows();
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (id == QLatin1String(rows[i].id)) return static_cast<int>(i);
    return -1;
}

} // namespace hammerline
