// A button that shows the key that does the same.
#pragma once

#include <QAbstractButton>

namespace hammerline {

class KeyButton : public QAbstractButton {
    Q_OBJECT
public:
    KeyButton(const QString& text, const QString& key, QWidget* parent);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;

private:
    QString m_key;
};

} // namespace hammerline
