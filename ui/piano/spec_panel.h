// The zones in force for a piano: its spec sheet row by row, and below them the notes with a zone of their own. Enter
// changes one, with the reason; Delete takes a note's own zone back; U chooses the unit that is typed for its
// dimension.
#pragma once

#include "ui/stations/station_words.h"

#include <QDialog>

class QFormLayout;
class QLineEdit;

namespace hammerline {

/// Low, aim and high of one row of the sheet, at its last note too where it tapers; or of single notes.
class ZoneDialog : public QDialog {
    Q_OBJECT
public:
    ZoneDialog(const ZoneRow&, Unit, const Piano&, QWidget* parent);
    /// What was typed. Refuses an unreadable number, badZone, reasonMissing, and notes that are none.
    struct Change {
        ZoneRow row;                   // with the reason as its source
        std::vector<NoteNumber> notes; // empty: the whole row
        std::string reason;
    };
    Outcome<Change> change() const;
    /// `limits`: low, aim, high; three more where the row tapers.
    void fill(const QStringList& limits, const QString& notes, const QString& reason);

private:
    std::array<QLineEdit*, 3> addLimits(QFormLayout*, const Zone&, bool last);
    Outcome<Zone> zoneOf(const std::array<QLineEdit*, 3>&) const;
    void check();

    ZoneRow m_row;
    Unit m_unit;
    const Piano& m_piano;
    std::array<QLineEdit*, 3> m_first{}, m_last{};
    QLineEdit *m_notes, *m_reason;
    QLabel* m_remark;
};

class SpecPanel : public Panel {
    Q_OBJECT
public:
    SpecPanel(Workbench&, QWidget* parent);
    RowTable& table() { return *m_table; }
    void refresh();

Q_SIGNALS:
    void refused(const hammerline::Refusal&);

private:
    void change(int key);
    void takeBack();
    void nextUnit();
    std::optional<DimensionId> currentDimension() const;
    Outcome<void> keep(const ZoneDialog::Change&, std::size_t rowOfSheet);
    void showSource();

    Workbench& m_bench;
    RowTable* m_table;
    QLabel* m_source;
};

} // namespace hammerline
