// F8: to the place where what comes next is done.
#include "core/sheet/work_now.h"
#include "ui/main_window.h"
#include "ui/stations/work_place.h"

namespace hammerline {

void MainWindow::goToNext() {
    const PianoRecord* record = m_bench.record();
    if (!record) return newPiano();
    const WorkPlace place = placeOf(workNow(*record).next);
    if (!showStation(place.station)) return;
    if (place.cell) m_bench.setCell(*place.cell);
    station()->arrive(); // at the cell
    station()->meetStep(place.step);
}

} // namespace hammerline
