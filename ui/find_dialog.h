// Find: a piano of the book by its name, a note by number or pitch, a finding by part, fault, remedy or remark.
#pragma once

#include "ui/workbench.h"

#include <QDialog>

class QLineEdit;
class QListWidget;

namespace hammerline {

struct Found {
    QString line;      // as it is listed
    std::string piano; // uuid; empty: the one that is chosen
    std::optional<NoteNumber> note;
    QString station; // where to go; empty: stay
};

/// Everything that holds the words typed, in capitals or not; every word must occur. Pianos, then the note, then
/// findings of the chosen piano; `most` of them.
std::vector<Found> findInBook(const Workbench&, const QString& typed, std::size_t most = 200);

class FindDialog : public QDialog {
    Q_OBJECT
public:
    FindDialog(const Workbench&, QWidget* parent);
    std::optional<Found> chosen() const;

protected:
    bool eventFilter(QObject*, QEvent*) override;

private:
    void look();
    const Workbench& m_bench;
    std::vector<Found> m_found;
    QLineEdit* m_typed;
    QListWidget* m_list;
};

} // namespace hammerline
