// The one sentence of what comes next, the same on every station: reckoned a moment after the last change, so that
// typing never waits for it.
#pragma once

#include "ui/widgets/look.h"
#include "ui/workbench.h"

#include <QWidget>

class QLabel;

namespace hammerline {

class NextLine : public QWidget {
    Q_OBJECT
public:
    NextLine(Workbench&, QWidget* parent);
    /// At once, for a picture or a test.
    void refresh();
    /// "13 of 34" steps of the work; empty without a piano.
    const QString& counted() const { return m_counted; }

Q_SIGNALS:
    void counts(); // other numbers

protected:
    void changeEvent(QEvent*) override;

private:
    void later();
    void dress();

    Workbench& m_bench;
    QLabel *m_text, *m_goes;
    QTimer m_pause;
    QString m_counted;
};

} // namespace hammerline
