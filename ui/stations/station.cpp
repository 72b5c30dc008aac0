#include "ui/stations/station.h"

#include <QCoreApplication>

#include <algorithm>

namespace hammerline {

void Station::stepDimension(int by) {
    const auto shown = m_workbench.columns();
    const auto here = std::find(shown.begin(), shown.end(), m_workbench.dimension());
    const auto at = (here == shown.end() ? 0 : here - shown.begin()) + by;
    if (at >= 0 && at < static_cast<std::ptrdiff_t>(shown.size()))
        m_workbench.setDimension(shown[static_cast<std::size_t>(at)]);
}

void Station::print() {
    Q_EMIT notice(QCoreApplication::translate(
        "Station", "This station has no sheet of its own. Survey, Review, Work and Passes print theirs with Ctrl+P."));
}

} // namespace hammerline
