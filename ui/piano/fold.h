// A fold: a bar with its name and what lies in it in one line; Space, Enter or a click opens and closes it.
#pragma once

#include <QAbstractButton>

namespace hammerline {

class FoldBar : public QAbstractButton {
    Q_OBJECT
public:
    FoldBar(const QString& title, QWidget* parent);
    /// What lies in it, in one line; and the key that opens it, where it has one.
    void setSummary(const QString&);
    void setKey(const QString& key);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent*) override;

private:
    QString m_summary, m_key;
};

} // namespace hammerline
