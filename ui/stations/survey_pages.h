// What stands beside the form of a finding: parts to order, the whole job, symptoms, photographs. A bar of names
// chooses.
#pragma once

#include "ui/workbench.h"

#include <QWidget>

#include <array>
#include <utility>

class QHBoxLayout;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace hammerline {

class SurveyJob;
class SurveyMemory;
class SurveyOrders;
class SurveySymptoms;

class SurveyPages : public QWidget {
    Q_OBJECT
public:
    enum class Page : std::uint8_t { orders, job, symptoms, memory };

    SurveyPages(Workbench&, QWidget* parent);
    Page page() const;
    void showPage(Page);
    /// The page before or after, and the focus into it.
    void step(int by);
    QWidget* front() const;

    SurveyOrders& orders() { return *m_orders; }
    SurveyJob& job() { return *m_job; }
    SurveySymptoms& symptoms() { return *m_symptoms; }
    SurveyMemory& memory() { return *m_memory; }

Q_SIGNALS:
    void pageChanged();
    void refused(const hammerline::Refusal&);

private:
    QWidget* makeBar();

    SurveyOrders* m_orders;
    SurveyJob* m_job;
    SurveySymptoms* m_symptoms;
    SurveyMemory* m_memory;
    QStackedWidget* m_stack;
    std::array<QPushButton*, 4> m_buttons{};
};

/// A bar in the colour of headers with its row.
std::pair<QWidget*, QHBoxLayout*> headBar(QWidget* parent);
/// A bold title and a remark in such a bar.
QWidget* titleBar(QWidget* parent, const QString& title, QLabel* remark);

} // namespace hammerline
