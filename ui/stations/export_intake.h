// An exported file of whole pianos, looked at before anything is stored: where each piano goes, what comes with it,
// which readings are doubtful.
#pragma once

#include "core/sheet/export_reading.h"
#include "ui/workbench.h"

#include <QDialog>

class QCheckBox;
class QLabel;
class QPushButton;
class QStandardItemModel;
class QTableWidget;

namespace hammerline {

class ExportIntakeDialog : public QDialog {
    Q_OBJECT
public:
    ExportIntakeDialog(Workbench&, const QByteArray& bytes, const QString& source, QWidget* parent);

    bool readable() const { return !m_refusal; }
    QString summary() const;
    const std::vector<BenchBook::Incoming>& incoming() const { return m_incoming; }
    /// Into a piano of the book (by uuid) or as a new one (empty).
    void put(std::size_t piano, const std::string& into);
    void takeDoubtful(bool);

private:
    void build();
    void read();
    void fill();
    void fillPianos();
    void fillQuestions();

    Workbench& m_bench;
    QByteArray m_bytes;
    QString m_source;
    std::optional<Refusal> m_refusal;
    std::vector<BenchBook::Incoming> m_incoming;
    std::vector<ExportQuestion> m_questions;
    QLabel* m_summary = nullptr;
    QStandardItemModel* m_places = nullptr; // where a piano may go
    QTableWidget *m_pianos = nullptr, *m_asked = nullptr;
    QCheckBox* m_doubtful = nullptr;
    QPushButton* m_take = nullptr;
};

} // namespace hammerline
