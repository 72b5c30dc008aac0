// The one sentence of what comes next, the same on every station: reckoned a moment after the last change, so that
// typing never waits for it.
#pragma once

#include "ui/widgets/look.h"
#include "ui/workbench.h"

#include <QLabel>

namespace hammerline {

class NextLine : public QLabel {
    Q_OBJECT
public:
    NextLine(Workbench&, QWidget* parent);
    /// At once, for a picture or a test.
    void refresh();

protected:
    void changeEvent(QEvent*) override;

private:
    void later();

    Workbench& m_bench;
    QTimer m_pause;
};

} // namespace hammerline
