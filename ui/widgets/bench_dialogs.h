// The short form that begins a pass.
#pragma once

#include "ui/workbench.h"

#include <QDialog>

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QWidget;

namespace hammerline {

class NewPassDialog : public QDialog {
    Q_OBJECT
public:
    NewPassDialog(const PianoRecord&, QWidget* parent);
    /// Refuses unreadable: temperature or humidity that is no number of its range; badLineSag.
    Outcome<NewPass> pass() const;
    void fill(const QString& label, const QString& temperature, const QString& humidity);

private:
    void check();
    bool againstLine() const;
    const Piano& m_piano;
    QLineEdit *m_label, *m_temperature, *m_humidity, *m_lineSag;
    QCheckBox *m_stackIn, *m_weightsOn, *m_onBench;
    std::vector<std::pair<DimensionId, QComboBox*>> m_references;
    QLabel* m_remark;
};

} // namespace hammerline
