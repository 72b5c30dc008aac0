// One question that comes before a plan, with its answers in place: Y in order (or yes), N not in order (or no), L not
// yet. Where it was tried, and where it is wrong, is typed below it.
#pragma once

#include "ui/questions/answering.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace hammerline {

class QuestionRow : public QWidget {
    Q_OBJECT
public:
    QuestionRow(Workbench&, std::string_view question, QWidget* parent);
    std::string_view question() const { return m_question; }
    /// Whether the book has no answer yet. An answer taken back is asked again.
    void setOpen(bool);
    bool isOpen() const { return m_open; }
    /// How it stands, for those who do not see it.
    QString spoken() const;

Q_SIGNALS:
    /// The row before or after.
    void step(int by);

protected:
    void keyPressEvent(QKeyEvent*) override;
    void focusInEvent(QFocusEvent*) override;
    void focusOutEvent(QFocusEvent*) override;
    void mousePressEvent(QMouseEvent*) override;
    void paintEvent(QPaintEvent*) override;
    bool eventFilter(QObject*, QEvent*) override;

private:
    enum class Answer : std::uint8_t { none, good, bad };
    QPushButton* addButton(const QString& text, const QString& key);
    void choose(Answer);
    void askWhere(Answer);
    void closeWhere();
    void keepWhere();
    void settle(const Outcome<void>&, const QString& answer);
    void sayBelow(const QString& text, bool refused);
    bool wantsNotes(Answer) const;

    Workbench& m_bench;
    std::string m_question;
    QuestionForm m_form;
    QLabel *m_text, *m_below, *m_whereLabel;
    QPushButton *m_good = nullptr, *m_bad = nullptr, *m_later = nullptr;
    QWidget* m_where;
    QComboBox* m_fault;
    QLineEdit* m_notes;
    Answer m_asked = Answer::none; // what the notes are typed for
    QString m_answer;
    bool m_open = true;
};

} // namespace hammerline
