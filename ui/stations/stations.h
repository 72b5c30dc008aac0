// The stations in the order of work. The window makes each at its first visit.
#pragma once

#include "ui/stations/station.h"

#include <array>

namespace hammerline {

Station* makePianoStation(Workbench&);
Station* makeSurveyStation(Workbench&);
Station* makeMeasureStation(Workbench&);
Station* makeReviewStation(Workbench&);
Station* makePassesStation(Workbench&);
Station* makeWorkStation(Workbench&);

struct StationRow {
    const char* id;   // for settings, command line and Station::goTo
    const char* name; // translated where shown
    Station* (*make)(Workbench&);
};
/// The names are marked for translation in the context "Station".
const std::array<StationRow, 6>& stationRows();
/// Index of an id; -1: none. What was once called "adjust" is "work".
int stationIndex(const QString& id);

} // namespace hammerline
