// A table from a file or the clipboard, looked at before anything is stored: how it was read, what each column means,
// which readings are sound, which are asked about and which are refused.
#pragma once

#include "ui/workbench.h"

#include <QDialog>
#include <QTableWidget>

class QComboBox;
class QLabel;
class QPushButton;

namespace hammerline {

/// Cells of a bare block (no header, no notes), laid down from a cell as one would type them.
Intake layDown(const Workbench&, const QString& block, Cell from, const std::vector<DimensionId>& columns);
/// True where the text is such a block: numbers and words only.
bool isBareBlock(const QString& text);

class IntakeDialog : public QDialog {
    Q_OBJECT
public:
    /// A whole table with a header; `source` is the file's name, empty for the clipboard.
    IntakeDialog(Workbench&, const QByteArray& bytes, const QString& source, QWidget* parent);
    /// A bare block already laid down.
    IntakeDialog(Workbench&, Intake, QWidget* parent);

    const Intake& intake() const { return m_intake; }
    bool readable() const { return m_readable; }
    /// The sound readings of the chosen pass of the file.
    std::vector<NewReading> taken() const;
    /// Gives a column another meaning; none: left out.
    void mapColumn(const QString& header, std::optional<DimensionId>);

private:
    void build();
    void buildColumns();
    void read();
    void fill();
    QString summary() const;

    Workbench& m_bench;
    QByteArray m_bytes;
    QString m_source;
    TableOptions m_options;
    Intake m_intake;
    bool m_bare = false, m_readable = true;
    QString m_refusal;
    QLabel* m_summary = nullptr;
    QTableWidget* m_columns = nullptr;
    QTableWidget* m_rows = nullptr;
    QComboBox *m_decimal = nullptr, *m_pass = nullptr;
    QPushButton* m_take = nullptr;
};

} // namespace hammerline
