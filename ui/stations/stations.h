// The stations in the order of work, and the work as a whole. The window makes each at its first visit.
#pragma once

#include "ui/stations/station.h"

#include <array>

namespace hammerline {

Station* makePianoStation(Workbench&);
Station* makeSurveyStation(Workbench&);
Station* makeMeasureStation(Workbench&);
Station* makeReviewStation(Workbench&);
Station* makeAdjustStation(Workbench&);
Station* makePassesStation(Workbench&);
Station* makeWorkStation(Workbench&);

struct StationRow {
    const char* id;   // for settings, command line and Station::goTo
    const char* name; // translated where shown
    Station* (*make)(Workbench&);
};
/// The names are marked for translation in the context "Station".
const std::array<StationRow, 7>& stationRows();
/// Index of an id; -1: none.
int stationIndex(const QString& id);

} // namespace hammerline
