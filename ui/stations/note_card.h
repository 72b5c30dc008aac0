// The note card: one note explained. Readings with their zones and deviations, what they lead one to expect of each
// other, the current dimension over the passes, findings, and how far the pass has come.
#pragma once

#include "ui/workbench.h"

#include <QWidget>

class QTextEdit;
class QToolButton;

namespace hammerline {

class RowTable;

class NoteCard : public QWidget {
    Q_OBJECT
public:
    explicit NoteCard(Workbench&, QWidget* parent = nullptr);
    /// As it stands after all that has happened.
    RowTable& rows();
    /// The text below the rows, as shown.
    QString text();
    QSize sizeHint() const override;

Q_SIGNALS:
    void howToAsked();

protected:
    void paintEvent(QPaintEvent*) override;
    void showEvent(QShowEvent*) override;
    void changeEvent(QEvent*) override;

private:
    void soon();
    void settle();
    void refresh();
    void layOut();
    void say(const QString& html);

    Workbench& m_bench;
    RowTable* m_rows = nullptr;
    QTextEdit* m_text = nullptr;
    QString m_html;
    QToolButton* m_howTo = nullptr;
    bool m_due = false;
};

} // namespace hammerline
