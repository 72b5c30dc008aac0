#include "ui/stations/stations.h"
#include "ui/widgets/empty_state.h"

#include <QCoreApplication>
#include <QVBoxLayout>

namespace hammerline {

namespace {

class PassesStation : public Station {
public:
    explicit PassesStation(Workbench& workbench) : Station(workbench) {
        auto* column = new QVBoxLayout(this);
        column->addWidget(new EmptyState(
            QCoreApplication::translate("Station", "One pass so far. The next one shows what changed."), this));
    }
    QString context() const override { return {}; }
    QList<KeyHint> hints() const override { return {}; }
};

} // namespace

Station* makePassesStation(Workbench& workbench) {
    return new PassesStation(workbench);
}

} // namespace hammerline
