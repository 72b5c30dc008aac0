#include "ui/stations/stations.h"
#include "ui/widgets/empty_state.h"

#include <QCoreApplication>
#include <QVBoxLayout>

namespace hammerline {

namespace {

class PianoStation : public Station {
public:
    explicit PianoStation(Workbench& workbench) : Station(workbench) {
        auto* column = new QVBoxLayout(this);
        column->addWidget(
            new EmptyState(QCoreApplication::translate("Station", "No piano yet. Ctrl+N enters one."), this));
    }
    QString context() const override { return {}; }
    QList<KeyHint> hints() const override { return {}; }
};

} // namespace

Station* makePianoStation(Workbench& workbench) {
    return new PianoStation(workbench);
}

} // namespace hammerline
