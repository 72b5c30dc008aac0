#include "ui/stations/stations.h"
#include "ui/widgets/empty_state.h"

#include <QCoreApplication>
#include <QVBoxLayout>

namespace hammerline {

namespace {

class AdjustStation : public Station {
public:
    explicit AdjustStation(Workbench& workbench) : Station(workbench) {
        auto* column = new QVBoxLayout(this);
        column->addWidget(new EmptyState(
            QCoreApplication::translate(
                "Station",
                "No plan yet: three trial notes and 12 readings are enough for a first one. Enter reckons it."),
            this));
    }
    QString context() const override { return {}; }
    QList<KeyHint> hints() const override { return {}; }
};

} // namespace

Station* makeAdjustStation(Workbench& workbench) {
    return new AdjustStation(workbench);
}

} // namespace hammerline
