// Our own schematic of one natural and one sharp, seen from the bass end, to scale along the key: front edge, front
// pin, balance pin, capstan and back rail, with the arms F, P, T and C marked from the balance pin. The mm stand in
// fields in their dimension lines.
#pragma once

#include "core/piano/piano.h"

#include <QWidget>

#include <array>
#include <optional>

class QLineEdit;

namespace hammerline {

class KeyDrawing : public QWidget {
    Q_OBJECT
public:
    explicit KeyDrawing(QWidget* parent = nullptr);
    void setPiano(const Piano&);
    /// The field of an arm, in the order F, P, T, C.
    QLineEdit* field(KeyColour, std::size_t arm) const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override;

private:
    void placeFields();

    std::optional<Piano> m_piano;
    std::array<std::array<QLineEdit*, 4>, 2> m_fields{}; // by KeyColour and arm
};

} // namespace hammerline
