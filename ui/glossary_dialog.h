// The glossary: what the words of the program mean; the field above narrows it.
#pragma once

#include <QDialog>

class QLineEdit;
class QTextEdit;

namespace hammerline {

class GlossaryDialog : public QDialog {
    Q_OBJECT
public:
    explicit GlossaryDialog(QWidget* parent);
    QString shownText() const;

protected:
    bool eventFilter(QObject*, QEvent*) override;

private:
    void look();
    QLineEdit* m_typed;
    QTextEdit* m_text;
};

/// The words of what a person stands at: its label, its name, the heading of its column.
QString wordsAt(const QWidget* focus);

} // namespace hammerline
