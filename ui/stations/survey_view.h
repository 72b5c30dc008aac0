// The table of parts by notes: quick entry by keyboard, one letter a fault, most cells by one key for the rest of a
// row. Columns stand on the note axis, straight above the keys of the strip.
#pragma once

#include "ui/stations/survey_model.h"
#include "ui/widgets/note_axis.h"

#include <QTableView>

namespace hammerline {

class SurveyView : public QTableView {
    Q_OBJECT
public:
    explicit SurveyView(Workbench&, QWidget* parent = nullptr);

    SurveyModel& survey() { return *m_model; }
    const SurveyModel& survey() const { return *m_model; }
    const NoteAxis& axis() const { return m_axis; }
    const Part* currentPart() const;
    /// The notes selected in the current row.
    std::vector<NoteNumber> chosenNotes() const { return chosenNotes(currentIndex().row()); }
    std::vector<NoteNumber> chosenNotes(int row) const;
    /// Rows with a selected place; the current one at least.
    std::vector<int> chosenRows() const;
    void setCurrentPart(std::string_view part);
    /// Says this of the chosen notes of the current row: a fault is one part's.
    void sayFault(const Fault&);
    /// Of every chosen place, in every row. Mended and watched only where something was found.
    void sayState(FindingState);
    void sayRestSound();
    void saySameAsLast();
    /// What a form entered is the last finding too.
    void rememberLast(const Finding& finding) { m_last = finding; }
    const std::optional<Finding>& last() const { return m_last; }

Q_SIGNALS:
    void chosenChanged();
    void refused(const Refusal&);
    /// What the last key did, or why it did nothing.
    void told(const QString& sentence);

protected:
    void keyPressEvent(QKeyEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void changeEvent(QEvent*) override;
    void currentChanged(const QModelIndex&, const QModelIndex&) override;
    void selectionChanged(const QItemSelection&, const QItemSelection&) override;

private:
    void layOut();
    void follow();
    std::vector<Finding> spread(Finding pattern, const std::vector<NoteNumber>&, int row) const;
    void store(const std::vector<Finding>&);
    bool letter(const QKeyEvent&);

    Workbench& m_bench;
    SurveyModel* m_model;
    NoteAxis m_axis;
    std::optional<Finding> m_last;
    bool m_following = false;
};

} // namespace hammerline
