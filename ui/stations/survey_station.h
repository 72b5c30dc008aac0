// The Survey station: what is broken or worn at which note, what has to be mended first, what has to be ordered, and
// what is asked before a plan is made.
#pragma once

#include "ui/stations/station.h"

class QComboBox;
class QLabel;

namespace hammerline {

class EmptyState;
class SurveyForm;
class SurveyOrders;
class SurveyView;

class SurveyStation : public Station {
    Q_OBJECT
public:
    explicit SurveyStation(Workbench&);

    QString context() const override;
    QWidget* tools() override { return m_tools; }
    QList<KeyHint> hints() const override;
    QString hintRemark() const override;
    StripMarks strip() const override;
    void arrive() override;
    QList<QWidget*> panels() override;

    SurveyView& view() { return *m_view; }
    SurveyForm& form() { return *m_form; }
    SurveyOrders& orders() { return *m_orders; }

private:
    void buildTools();
    QWidget* buildHead();
    QWidget* buildFoot();
    void refresh();
    void takeFromTable();
    void askSymptom();
    void askMarks();
    void refuse(const Refusal&);

    EmptyState* m_empty = nullptr;
    QWidget* m_head = nullptr;
    QLabel* m_rows = nullptr;
    SurveyView* m_view = nullptr;
    QWidget* m_foot = nullptr;
    SurveyForm* m_form = nullptr;
    SurveyOrders* m_orders = nullptr;
    QLabel* m_asked = nullptr;
    QLabel* m_caution = nullptr;
    QWidget* m_tools = nullptr;
    QComboBox* m_shown = nullptr;
};

} // namespace hammerline
