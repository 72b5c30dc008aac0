// The choices a plan is reckoned by, at the right of the context bar.
#pragma once

#include "core/plan/plan.h"

#include <QWidget>

class QComboBox;

namespace hammerline {

class PlanTools : public QWidget {
    Q_OBJECT
public:
    explicit PlanTools(QWidget* parent);
    PlanOptions options() const;

Q_SIGNALS:
    void chosen();
    void printAsked();

private:
    QComboBox* choice(const QString& name, const QStringList& items);
    QComboBox *m_stage = nullptr, *m_intent = nullptr, *m_float = nullptr, *m_minutes = nullptr;
};

} // namespace hammerline
