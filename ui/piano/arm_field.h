// A field in a dimension line of the key's drawing: the arm's letter bold at its left, the mm at its right; italic
// where the figure is the customary one.
#pragma once

#include <QLineEdit>

namespace hammerline {

class ArmField : public QLineEdit {
    Q_OBJECT
public:
    ArmField(const QString& letter, const QString& spoken, QWidget* parent);
    static QSize size();

protected:
    void paintEvent(QPaintEvent*) override;

private:
    QString m_letter;
};

} // namespace hammerline
