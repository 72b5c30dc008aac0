#include "ui/stations/stations.h"
#include "ui/widgets/empty_state.h"

#include <QCoreApplication>
#include <QVBoxLayout>

namespace hammerline {

namespace {

class SurveyStation : public Station {
public:
    explicit SurveyStation(Workbench& workbench) : Station(workbench) {
        auto* column = new QVBoxLayout(this);
        column->addWidget(
            new EmptyState(QCoreApplication::translate(
                               "Station", "Nothing found yet. Arrows choose part and note, a letter names the fault."),
                           this));
    }
    QString context() const override { return {}; }
    QList<KeyHint> hints() const override { return {}; }
};

} // namespace

Station* makeSurveyStation(Workbench& workbench) {
    return new SurveyStation(workbench);
}

} // namespace hammerline
