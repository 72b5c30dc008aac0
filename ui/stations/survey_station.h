// The Survey station: what is broken or worn at which note, what has to be mended first, what has to be ordered, and
// what is asked before a plan is made.
#pragma once

#include "ui/stations/station.h"

class QComboBox;
class QLabel;

namespace hammerline {

class EmptyState;
class SurveyForm;
class SurveyPages;
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
    About place() const override;
    QList<QWidget*> panels() override;
    /// The work list.
    void print() override;

    /// What stands beside the form; Ctrl+Page Down and Up go through it.
    SurveyPages& pages() { return *m_pages; }
    SurveyView& view() { return *m_view; }
    SurveyForm& form() { return *m_form; }

protected:
    void resizeEvent(QResizeEvent*) override;

private:
    void buildTools();
    QWidget* buildHead();
    QWidget* buildFoot();
    void refresh();
    void takeFromTable();
    void chooseInForm(const QString& part);
    void printParts();
    void preview(int sheetKind);
    void askMarks();
    void refuse(const Refusal&);

    EmptyState* m_empty = nullptr;
    QWidget* m_head = nullptr;
    QLabel* m_rows = nullptr;
    SurveyView* m_view = nullptr;
    QWidget *m_foot = nullptr, *m_remarks = nullptr;
    SurveyForm* m_form = nullptr;
    SurveyPages* m_pages = nullptr;
    QLabel* m_asked = nullptr;
    QLabel* m_caution = nullptr;
    QWidget* m_tools = nullptr;
    QComboBox* m_shown = nullptr;
};

} // namespace hammerline
