// A step of the work as a page: what for, how, which way, when it is good; below, what of it is done and the keys that
// say so.
#pragma once

#include "core/sheet/work_now.h"
#include "ui/stations/station_words.h"

class QGridLayout;
class QLineEdit;
class QTextBrowser;

namespace hammerline {

class DoingDrawing;
class KeyButton;

class StepPage : public QWidget {
    Q_OBJECT
public:
    StepPage(Workbench&, QWidget* parent);
    /// Null: there is no step to show, and `instead` says why.
    void showStep(const StepNow*, const QString& instead = {});
    /// The field for notes done now takes the keys, beginning with the one that was typed. False: this step is of the
    /// whole piano and has no notes.
    bool beginNotes(const QString& first);
    void clearNotes();
    QTextBrowser& text() { return *m_text; }

Q_SIGNALS:
    void allAsked();
    void notesTyped(const QString& notes);
    void notHereAsked();
    void goAsked();
    void left(); // the field was left without an answer

protected:
    void resizeEvent(QResizeEvent*) override;
    bool eventFilter(QObject*, QEvent*) override;

private:
    void layButtons();
    void sayText();
    void sayDone();
    void layDrawing();
    bool takesNotes() const;

    Workbench& m_bench;
    StepNow m_now;
    bool m_has = false, m_wide = false;
    Panel* m_panel;
    QTextBrowser* m_text;
    QLabel *m_done, *m_field;
    QLineEdit* m_notes;
    QWidget *m_body = nullptr, *m_foot;
    DoingDrawing* m_drawing;
    QGridLayout* m_buttons = nullptr;
    KeyButton *m_all, *m_not, *m_go;
};

} // namespace hammerline
