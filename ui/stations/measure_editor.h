// The field in which a reading is typed: a line of text with an echo of what is understood. It never changes what was
// typed, and gives keys that end the typing to the view.
#pragma once

#include "ui/stations/measure_understanding.h"
#include "ui/widgets/plate.h"

#include <QLineEdit>
#include <QPointer>

namespace hammerline {

class ReadingEditor : public QLineEdit {
    Q_OBJECT
public:
    ReadingEditor(const Workbench&, Cell, QWidget* viewport);
    ~ReadingEditor() override;

    Cell cell() const { return m_cell; }
    /// A further trial of the cell instead of a new value over the old one.
    void setRepeat(bool on);
    bool repeat() const { return m_repeat; }
    bool changed() const { return text() != m_initial; }
    void setInitial(const QString&);
    const Understanding& meaning() const { return m_meaning; }
    /// Shows the question or refusal with its answers; called when a person wanted to go on.
    void ask();
    bool asking() const { return m_asking; }
    const Plate& plate() const { return *m_plate; }
    /// Where the cell now lies in the viewport; moves field and plate.
    void placeAt(const QRect& cell);

Q_SIGNALS:
    /// Enter (1), Shift+Enter (-1), up, down...: the text is to be stored first.
    void finished(Qt::Key, Qt::KeyboardModifiers);
    void abandoned();
    /// An answer to the question: the reading as typed.
    void taken();
    void undoAsked();
    void redoAsked();
    void left();

protected:
    void keyPressEvent(QKeyEvent*) override;
    bool event(QEvent*) override;
    void focusOutEvent(QFocusEvent*) override;
    void paintEvent(QPaintEvent*) override;

private:
    void understandNow();
    bool answer(QKeyEvent*);

    const Workbench& m_bench;
    Cell m_cell;
    QString m_initial;
    Understanding m_meaning;
    QPointer<Plate> m_plate;
    QRect m_cellRect;
    bool m_repeat = false, m_asking = false;
};

/// Answers to a question: Enter takes the suggestion (where there is one), F9 takes what was typed.
inline constexpr Qt::Key kTakeAsTyped = Qt::Key_F9;

} // namespace hammerline
