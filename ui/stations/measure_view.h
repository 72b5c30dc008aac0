// The grid of readings: typing, words by one key, Enter by the order of entry, and commits before the cursor moves.
#pragma once

#include "ui/stations/measure_model.h"
#include "ui/stations/measure_order.h"

#include <QPointer>
#include <QTableView>

namespace hammerline {

class Plate;
class ReadingEditor;

class MeasureView : public QTableView {
    Q_OBJECT
public:
    explicit MeasureView(Workbench&, QWidget* parent = nullptr);

    MeasureModel& readings() const { return *m_model; }
    void setOrder(const EntryOrder&);
    const EntryOrder& order() const { return m_order; }
    /// Stores what is being typed and closes the field. False: it stays open with its question or refusal.
    bool commitEditor();
    ReadingEditor* editor() const;
    void scrollTo(const QModelIndex&, ScrollHint = EnsureVisible) override;
    void setRoomy(bool);
    /// Opens the field with this text, as if typed.
    void type(const QString& text);
    void repeatReading();
    void pasteText(const QString&);

Q_SIGNALS:
    void undoAsked();
    void redoAsked();
    /// A refusal that has no field to stand at.
    void refused(const hammerline::Refusal&);
    void pasted(const QString& text);
    void editingChanged();
    void howToAsked();

public:
    /// What stands beside the current cell while nothing is typed; null where nothing is said.
    const Plate* word() const;

protected:
    void keyPressEvent(QKeyEvent*) override;
    void mousePressEvent(QMouseEvent*) override;
    bool edit(const QModelIndex&, EditTrigger, QEvent*) override;
    QModelIndex moveCursor(CursorAction, Qt::KeyboardModifiers) override;
    void currentChanged(const QModelIndex&, const QModelIndex&) override;
    void resizeEvent(QResizeEvent*) override;
    void focusInEvent(QFocusEvent*) override;
    void focusOutEvent(QFocusEvent*) override;
    void changeEvent(QEvent*) override;
    void updateGeometries() override;
    void scrollContentsBy(int, int) override;

private:
    void follow();
    void refit();
    void fitColumns();
    void wire(ReadingEditor*);
    void closeField();
    void showCurrent();
    bool storeTyped();
    void leaveFieldFor(const QModelIndex&);
    void afterFinish(Qt::Key, Qt::KeyboardModifiers);
    QModelIndex after(Qt::Key, Qt::KeyboardModifiers);
    QModelIndex step(int by) const;
    void advance(int by);
    void moveTo(const QModelIndex&);
    // measure_stay.cpp
    void goOn(const QModelIndex& next);
    void tell(bool refusal, const QString& headline, const QString& more);
    void chosen();
    bool refuses(const QKeyEvent&);
    bool store(Cell, const Reading&, bool repeat);
    bool takeLetter(QKeyEvent*);
    void enterWord(Qt::Key);
    void quickLook();
    void restRight();
    void copyFromAbove();
    void fillDown();
    void markNotFitted();
    void withdrawSelected();
    void rebuildWalk();
    QModelIndex neighbour(QModelIndex, int rows, int columns) const;

    Workbench& m_bench;
    MeasureModel* m_model;
    EntryOrder m_order;
    EntryWalk m_walk;
    QPointer<ReadingEditor> m_editor;
    int m_shownRow = -1;
    QWidget* m_corner = nullptr;
    Plate* m_word = nullptr;
    bool m_stays = false; // the hand came to an end here: the next digits are not for this cell
    bool m_roomy = false, m_following = false;
};

} // namespace hammerline
