// One finding for many notes: notes, part, what is wrong, how bad, what is done. Notes that this piano does not have
// are named; the others are kept.
#pragma once

#include "ui/stations/survey_model.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace hammerline {

class SurveyForm : public QWidget {
    Q_OBJECT
public:
    explicit SurveyForm(Workbench&, QWidget* parent = nullptr);

    /// From the table: the part and notes under the cursor.
    void take(const Part&, const std::vector<NoteNumber>&, const Finding* standing);
    void takeFocus();
    /// The notes typed that can be had.
    std::vector<NoteNumber> named() const { return m_notes; }
    /// Stores the finding. False: nothing could be stored, the field that is wrong has the focus.
    bool add();
    void sameAs(const Finding&);

Q_SIGNALS:
    void namedChanged();
    void added(const Finding&);
    void sameAskedFor();
    void partChosen(const QString& part);
    void refused(const Refusal&);

protected:
    void keyPressEvent(QKeyEvent*) override;

private:
    void build();
    void fillParts();
    void fillFaults();
    void readNotes();
    void showWords();
    const Part* part() const;
    std::optional<Finding> pattern();

    Workbench& m_bench;
    std::vector<NoteNumber> m_notes;
    bool m_filling = false;
    QLineEdit* m_notesField = nullptr;
    QLabel* m_notesFault = nullptr;
    QComboBox* m_part = nullptr;
    QComboBox* m_fault = nullptr;
    QComboBox* m_state = nullptr;
    QComboBox* m_remedy = nullptr;
    QLabel* m_amountLabel = nullptr;
    QLineEdit* m_amount = nullptr;
    QLineEdit* m_remark = nullptr;
    QLabel* m_words = nullptr;
    QPushButton* m_same = nullptr;
    QPushButton* m_add = nullptr;
};

} // namespace hammerline
