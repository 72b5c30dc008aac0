// Our own schematic of one natural and one sharp, seen from the bass end, to scale along the key: front edge, front
// pin, balance pin, capstan and back rail, with the arms F, P, T and C marked from the balance pin.
#pragma once

#include "core/piano/piano.h"

#include <QWidget>

#include <optional>

namespace hammerline {

class KeyDrawing : public QWidget {
    Q_OBJECT
public:
    explicit KeyDrawing(QWidget* parent = nullptr);
    void setPiano(const Piano&);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent*) override;

private:
    std::optional<Piano> m_piano;
};

} // namespace hammerline
