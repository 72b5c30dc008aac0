// The Measure station: the grid of readings with its order of entry and unit.
#pragma once

#include "ui/stations/measure_order.h"
#include "ui/stations/station.h"

class QComboBox;

namespace hammerline {

class MeasureView;
class ReferenceBand;

class MeasureStation : public Station {
    Q_OBJECT
public:
    explicit MeasureStation(Workbench&);

    QString context() const override;
    QWidget* tools() override { return m_tools; }
    QList<KeyHint> hints() const override;
    QString hintRemark() const override;
    bool wantsNoteCard() const override { return true; }
    void arrive() override;
    bool leave() override;
    void stepDimension(int by) override;
    QList<QWidget*> panels() override;

    MeasureView& grid() const { return *m_view; }
    const EntryOrder& order() const;
    void setOrder(const EntryOrder&);
    void paste(const QString& text);
    /// The order after (1) or before (-1) in the list; asks for what it needs.
    void stepOrder(int by);
    /// All dimensions of a note before the next note, in whatever order of notes.
    void setAcross(bool);

Q_SIGNALS:
    void orderChosen(const hammerline::EntryOrder&);
    void undoAsked();
    void redoAsked();
    void benchAsked();
    void howToAsked();

private:
    void buildTools();
    void chooseOrder(int index);
    void showOrder();
    void followOrder();
    void keep(const EntryOrder&);
    bool eventFilter(QObject*, QEvent*) override;
    void refreshUnits();
    void refreshEmpty();

    QWidget* m_tools = nullptr;
    QComboBox *m_order = nullptr, *m_unit = nullptr;
    std::optional<std::pair<Kind, Unit>> m_unitsShown;
    MeasureView* m_view = nullptr;
    ReferenceBand* m_references = nullptr;
    QWidget* m_empty = nullptr;
};

} // namespace hammerline
