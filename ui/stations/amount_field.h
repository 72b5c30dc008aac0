// The field in which a line of the plan takes what was really done: it stands in the row, begins with the key that
// opened it, and says below how it is understood while it is typed.
#pragma once

#include "core/operation/amount.h"
#include "core/plan/plan.h"

#include <QLineEdit>

class QLabel;

namespace hammerline {

class RowTable;

class AmountField : public QLineEdit {
    Q_OBJECT
public:
    /// A field over the last cell of the table's current row. `first` is the key that began it: the caret stands
    /// behind it. Deletes itself when it is left.
    AmountField(RowTable&, const Step&, const Piano&, const QString& first);
    ~AmountField() override;

Q_SIGNALS:
    /// Signed in the sense of the operation's row.
    void taken(double amount);

protected:
    void keyPressEvent(QKeyEvent*) override;
    void focusOutEvent(QFocusEvent*) override;

private:
    std::optional<double> typed() const;
    bool beyondCap() const;
    void echo();
    void take();
    void leave();

    RowTable& m_table;
    const Step m_step;
    const Piano m_piano;
    QLabel* m_echo;
    bool m_asked = false; // more than one go was asked about, and Enter keeps it now
    bool m_leaving = false;
};

} // namespace hammerline
