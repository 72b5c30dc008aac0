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

class IntakeDialog : public QDialog {
    Q_OBJECT
public:
    /// A whole table with a header; `source` is the file's name, empty for the clipboard.
    IntakeDialog(Workbench&, const QByteArray& bytes, const QString& source, QWidget* parent);
    /// A bare block already laid down.
    IntakeDialog(Workbench&, Intake, QWidget* parent);

    const Intake& intake() const { return m_intake; }
    bool readable() const { return m_readable; }
    /// What a person says to a doubtful text: it stays out, is taken as suggested or as it stands in the file.
    enum class Answer { leave, suggested, asTyped };
    /// `question`: index in intake().questions. False where that answer is not open.
    bool answer(std::size_t question, Answer);
    /// What is to be stored: the sound readings, the doubtful ones as answered, the marks. Readings and marks bear the
    /// name of a pass only where each is to go into its own.
    Intake taken() const;
    std::size_t takenCount() const;
    /// Takes one pass of a file of several into the pass shown; empty: each into its own.
    void choosePass(const QString& name);
    /// Gives a column another meaning; none: left out.
    void mapColumn(const QString& header, std::optional<DimensionId>);

private:
    void build();
    void buildColumns();
    void read();
    Outcome<Intake> readTable();
    bool wanted(const std::string& pass) const;
    void fill();
    QString summary() const;
    std::optional<Reading> answered(const Question&, Answer) const;
    void offerAnswers(int row, std::size_t question);

    Workbench& m_bench;
    std::map<std::size_t, Answer> m_answers;
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
