// A wheel that scrolls a page changes no choice it happens to pass over: a closed choice or a number lets the wheel
// through to the page, open or focused by a click or not. Put on the whole program.
#pragma once

#include <QObject>

namespace hammerline {

class QuietWheel : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

} // namespace hammerline
