// Our own schematic of an upright's and a grand's action at one note, seen from the bass end: key, wippen, jack,
// hammer, check and damper from simple geometry, with the distance of one dimension marked. Not to scale: small
// distances are drawn larger.
#pragma once

#include "core/piano/dimension.h"

#include <QWidget>

class QPainter;

namespace hammerline {

struct Look;

/// Paints the drawing into a rectangle.
void paintAction(QPainter&, const QRectF&, DimensionId, ActionKind, const Look&);

class ActionDrawing : public QWidget {
    Q_OBJECT
public:
    explicit ActionDrawing(QWidget* parent = nullptr);
    void setSubject(DimensionId, ActionKind);
    DimensionId dimension() const { return m_dimension; }
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;

private:
    DimensionId m_dimension{};
    ActionKind m_kind = ActionKind::upright;
};

} // namespace hammerline
