// The plate beside a field: an echo of what is understood, a question with its two answers, or a refusal.
#pragma once

#include <QFrame>

namespace hammerline {

class Plate : public QFrame {
    Q_OBJECT
public:
    enum class Kind { echo, question, refusal };
    explicit Plate(QWidget* parent);

    void say(Kind, const QString& headline, const QString& more);
    Kind kind() const { return m_kind; }
    QString headline() const { return m_headline; }
    QString spoken() const { return m_headline + u' ' + m_more; }
    QString more() const { return m_more; }
    /// Beside the field where the room to the right is enough, else below it (or above at the lower edge).
    void standBy(const QRect& field, const QRect& room);

protected:
    void paintEvent(QPaintEvent*) override;

private:
    bool oneLine() const;
    QSize wanted(int most) const;

    Kind m_kind = Kind::echo;
    QString m_headline, m_more;
};

} // namespace hammerline
