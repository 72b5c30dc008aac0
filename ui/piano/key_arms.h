// The arms of a natural and a sharp, typed in the drawing itself: four fields stand in their dimension lines, and what
// they bring is said below. An empty field is as customary.
#pragma once

#include "core/piano/piano.h"

#include <QWidget>

class QLabel;
class QLineEdit;

namespace hammerline {

class KeyDrawing;

class KeyArmsPage : public QWidget {
    Q_OBJECT
public:
    explicit KeyArmsPage(QWidget* parent);
    void show(const Piano&);
    /// Says below the drawing why what was typed cannot be; the fields keep it.
    void refuse(const QString& why);
    bool isRefused() const { return m_refused; }
    void forget();
    QLineEdit* field(KeyColour, std::size_t arm) const;

Q_SIGNALS:
    /// arms-natural or arms-sharp, "238,,140,126".
    void said(const QString& attribute, const QString& value);

protected:
    bool eventFilter(QObject*, QEvent*) override;

private:
    QString typed(KeyColour) const;
    void preview(KeyColour);
    void keep(KeyColour);
    void restore();
    void sayBelow(const Piano&);

    std::optional<Piano> m_piano;
    KeyDrawing* m_drawing;
    QLabel* m_below;
    bool m_refused = false;
};

} // namespace hammerline
