// Parts to order as the survey stands, with the whole set proposed where more than a tenth is faulty: Space or a click
// takes the whole set or only the faulty ones, H says that it has come, Enter or F2 asks for the spares.
#pragma once

#include "core/survey/job.h"
#include "ui/workbench.h"

#include <QTreeWidget>

namespace hammerline {

class SurveyOrders : public QTreeWidget {
    Q_OBJECT
public:
    explicit SurveyOrders(Workbench&, QWidget* parent = nullptr);
    const std::vector<PartsLine>& lines() const { return m_lines; }
    /// Takes the other choice at a line; nothing where no set is in question.
    void toggle(int line);
    /// Says that the line is ordered, then that it has come, then neither. What is ordered by size and was not measured
    /// is never ordered: it may only have come.
    void toggleInHand(int line);
    /// "diameter 1.27, length 12" of an old one; "1-12 width 11" of some notes.
    void askSizes(int line);
    void askSpares();
    void askPiece(PartsLine);

Q_SIGNALS:
    void refused(const Refusal&);

protected:
    void keyPressEvent(QKeyEvent*) override;
    void paintEvent(QPaintEvent*) override;

private:
    void refresh();
    bool inQuestion(const PartsLine&) const;

    Workbench& m_bench;
    std::vector<PartsLine> m_lines;
};

} // namespace hammerline
