// What is asked before a screw is turned, as one list that is answered in place. What was answered stays in it until it
// is left, with its answer.
#pragma once

#include "ui/questions/question_row.h"
#include "ui/widgets/row_table.h"

class QScrollArea;
class QVBoxLayout;

namespace hammerline {

class QuestionsPage : public Panel {
    Q_OBJECT
public:
    QuestionsPage(Workbench&, QWidget* parent);
    /// The questions that are open now.
    void show(const std::vector<std::string_view>& open);
    /// From the first open one on; answers given before are gone from the list.
    void begin(const std::vector<std::string_view>& open);
    int openCount() const;

Q_SIGNALS:
    /// Esc, or past the last of them.
    void left();

protected:
    void keyPressEvent(QKeyEvent*) override;

private:
    void step(const QuestionRow* from, int by);
    void add(std::string_view question);
    void clear();
    void say();

    Workbench& m_bench;
    QScrollArea* m_scroll;
    QVBoxLayout* m_column;
    std::vector<QuestionRow*> m_rows;
    std::string m_piano; // whose questions these are
};

} // namespace hammerline
