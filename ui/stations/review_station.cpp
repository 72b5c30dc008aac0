#include "ui/stations/stations.h"
#include "ui/widgets/empty_state.h"

#include <QCoreApplication>
#include <QVBoxLayout>

namespace hammerline {

namespace {

class ReviewStation : public Station {
public:
    explicit ReviewStation(Workbench& workbench) : Station(workbench) {
        auto* column = new QVBoxLayout(this);
        column->addWidget(
            new EmptyState(QCoreApplication::translate("Station", "Nothing measured in this pass. Ctrl+3."), this));
    }
    QString context() const override { return {}; }
    QList<KeyHint> hints() const override { return {}; }
};

} // namespace

Station* makeReviewStation(Workbench& workbench) {
    return new ReviewStation(workbench);
}

} // namespace hammerline
