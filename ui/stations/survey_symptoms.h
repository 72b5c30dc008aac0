// What is heard or felt, by notes, and where it comes from as far as readings and findings tell.
#pragma once

#include "ui/workbench.h"

#include <QWidget>

class QComboBox;
class QLineEdit;
class QTextBrowser;

namespace hammerline {

class SurveySymptoms : public QWidget {
    Q_OBJECT
public:
    explicit SurveySymptoms(Workbench&, QWidget* parent = nullptr);
    void takeFocus();
    /// Stores what the fields say.
    bool add();
    /// The answers as they are shown.
    QString answers() const;

Q_SIGNALS:
    void refused(const Refusal&);

protected:
    void keyPressEvent(QKeyEvent*) override;
    void showEvent(QShowEvent*) override;

private:
    void refresh();
    void offer();

    Workbench& m_bench;
    QLineEdit* m_notes = nullptr;
    QComboBox* m_symptom = nullptr;
    QTextBrowser* m_answers = nullptr;
    std::vector<std::string_view> m_offered;
    bool m_old = true;
};

} // namespace hammerline
