// What stands in the window while there is no piano: how to begin, the stations in a line each, and the five questions.
#pragma once

#include "ui/first/new_piano_form.h"

class QPushButton;

namespace hammerline {

class HintBar;
class KeyButton;

class FirstPage : public QWidget {
    Q_OBJECT
public:
    explicit FirstPage(QWidget* parent);
    NewPianoForm& form() const { return *m_form; }
    /// Where the file of the new piano will be: in `book` where one is open, else made under the piano's name.
    void setBook(const QString& book);
    /// Path of the file to be made; empty where a book is open.
    QString path() const;
    void say(const QString& sentence);

Q_SIGNALS:
    void begun();
    void openAsked();
    void demoAsked();

protected:
    /// N, O and D do what the buttons say, wherever no text is typed.
    void keyPressEvent(QKeyEvent*) override;
    void showEvent(QShowEvent*) override;

private:
    QWidget* buildWays();
    QWidget* buildQuestions();
    void chooseElsewhere();
    void showPlace();

    NewPianoForm* m_form;
    QPushButton *m_begin, *m_elsewhere;
    KeyButton* m_first = nullptr;
    QLabel *m_said, *m_place;
    QString m_book, m_chosen;
};

} // namespace hammerline
