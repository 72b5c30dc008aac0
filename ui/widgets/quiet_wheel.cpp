#include "ui/widgets/quiet_wheel.h"

#include <QAbstractSpinBox>
#include <QComboBox>
#include <QEvent>

namespace hammerline {

bool QuietWheel::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::Wheel) return false;
    const bool choice = qobject_cast<QComboBox*>(watched) || qobject_cast<QAbstractSpinBox*>(watched);
    if (!choice) return false;
    event->ignore(); // the page behind it scrolls
    return true;
}

} // namespace hammerline
