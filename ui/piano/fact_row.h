// One fact of the set-up: its name, a field or a choice, and a line below it that says what it decides, or why what was
// typed cannot be. A refused answer stays in the field until it is mended; Esc brings back what is in force.
#pragma once

#include <QWidget>

class QComboBox;
class QLabel;
class QLineEdit;

namespace hammerline {

class FactRow : public QWidget {
    Q_OBJECT
public:
    enum class Answer : std::uint8_t { typed, chosen };
    /// What a person reads, and the value it stands for.
    using Choices = QList<std::pair<QString, QVariant>>;
    FactRow(const QString& label, const QString& decides, Answer, QWidget* parent);

    QLineEdit* field() const { return m_field; }
    QComboBox* choice() const { return m_choice; }
    QWidget* editor() const;
    /// What is in force: said of this piano, or (italic, where it is empty) customary. Leaves a refused answer alone.
    void show(const QString& said, const QString& customary = {});
    void setChoices(const Choices&);
    void choose(const QVariant& value);
    /// Keeps what was typed, and says below it why it cannot be.
    void refuse(const QString& why);
    bool isRefused() const { return m_refused; }
    /// Drops a refused answer: another piano is shown.
    void forget();
    void setDecides(const QString&);
    /// Why it cannot be changed now; empty: it can.
    void hold(const QString& why);
    /// As the fold's summary says it: the choice, or what was said; empty where nothing was.
    QString summary() const;

Q_SIGNALS:
    void said(const QString& value);

protected:
    bool eventFilter(QObject*, QEvent*) override;
    void paintEvent(QPaintEvent*) override;

private:
    void build(const QString& label);
    void listenToField();
    void sayBelow();
    void restore();

    QLineEdit* m_field = nullptr; // one of the two
    QComboBox* m_choice = nullptr;
    QLabel *m_label, *m_below;
    QString m_decides, m_held, m_why, m_inForce;
    bool m_refused = false;
};

} // namespace hammerline
